import type { Kit } from '../../../core/plan/kit.ts';
import { inOrder, orderKeyAtEnd, orderKeyBetween } from '../../../core/plan/order-key.ts';
import type { Light, LightRole, Setup, Shoot, Spot } from '../../../core/plan/shoot.ts';

/** A setup to start from at a spot: one key from the first head of the kit. */
export function newSetup(shoot: Shoot, kit: Kit, spotId: string, lightId: string): Setup {
  const spot = shoot.spots[spotId];
  const key = newLight(kit, {}, 'key');
  return {
    order: orderKeyAtEnd(shoot.setups),
    name: `New setup, ${spot?.name ?? 'no spot'}`.slice(0, 120),
    spotId,
    startClock: '19:00',
    durationMin: 40,
    framing: null,
    patch: null,
    holdStops: 1,
    holdUnder: 'patch',
    unlitUnderStops: 2,
    people: 1,
    spacingM: 0.7,
    faceHeightM: 1.65,
    spreadLimitStops: 0.33,
    motion: 'posing',
    tripod: false,
    shaded: false,
    cameraId: inOrder(kit.cameras)[0]?.[0] ?? 'camera',
    lensId: lensFor(kit, spot),
    wishFNumber: 5.6,
    lights: key === null ? {} : { [lightId]: key },
    pinnedShutterS: null,
    pinnedFNumber: null,
    pinnedIso: null,
    pinnedFilterIds: null,
    clockPinned: false,
    holdPinned: false,
    framingPinned: false,
  };
}

function lensFor(kit: Kit, spot: Spot | undefined): string {
  const lenses = inOrder(kit.lenses);
  const focalLengthMm = spot?.framing.focalLengthMm ?? 50;
  const fits = lenses.find(
    ([, lens]) => lens.minFocalLengthMm <= focalLengthMm && lens.maxFocalLengthMm >= focalLengthMm,
  );
  return (fits ?? lenses[0])?.[0] ?? 'lens';
}

const STANDS: Readonly<Record<LightRole, Pick<Light, 'stops' | 'distanceM' | 'angleDeg'>>> = {
  key: { stops: 0, distanceM: 2, angleDeg: 35 },
  fill: { stops: -1.6, distanceM: 2.5, angleDeg: -10 },
  rim: { stops: -0.5, distanceM: 3, angleDeg: -150 },
  background: { stops: -1, distanceM: 3, angleDeg: 150 },
};

/** A light to start from, the first head that is still in the car; null when the kit has no head or modifier. */
export function newLight(
  kit: Kit,
  lights: Readonly<Record<string, Light>>,
  role: LightRole,
): Light | null {
  const heads = inOrder(kit.heads);
  const modifier = inOrder(kit.modifiers)[0];
  const inUse = (headId: string): number =>
    Object.values(lights).reduce(
      (sum, light) => sum + (light.headId === headId ? light.headCount : 0),
      0,
    );
  const head = heads.find(([id, { owned }]) => inUse(id) < owned) ?? heads[0];
  if (head === undefined || modifier === undefined) return null;
  return {
    order: orderKeyAtEnd(lights),
    role,
    ...STANDS[role],
    headId: head[0],
    headCount: 1,
    modifierId: modifier[0],
    diffuser: modifier[1].diffuserStops !== null,
    baffle: false,
    grid: false,
    gelId: null,
    heightM: 2.3,
    pinnedPowerStops: null,
    distancePinned: false,
    modifierPinned: false,
  };
}

/** The role a further light most likely has. */
export function nextRole(lights: Readonly<Record<string, Light>>): LightRole {
  const roles = new Set(Object.values(lights).map(({ role }) => role));
  return (['key', 'fill', 'rim'] as const).find((role) => !roles.has(role)) ?? 'background';
}

/** A copy that stands right after its original. */
export function copyOf(shoot: Shoot, setupId: string): Setup | null {
  const setups = inOrder(shoot.setups);
  const place = setups.findIndex(([id]) => id === setupId);
  const setup = setups[place]?.[1];
  if (setup === undefined) return null;
  const after = setups.slice(place + 1).find(([, { order }]) => order > setup.order);
  return {
    ...setup,
    name: `${setup.name.slice(0, 110)}, copy`,
    order: orderKeyBetween(setup.order, after?.[1].order ?? ''),
  };
}
