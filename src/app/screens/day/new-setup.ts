import { inOrder, orderKeyAtEnd } from '../../../core/plan/order-key.ts';
import type { Kit } from '../../../core/plan/kit.ts';
import type { Light, Setup, Shoot } from '../../../core/plan/shoot.ts';
import { fail, ok, type Result } from '../../../core/units/result.ts';

/**
 * A setup to start from: one person, the kit's first camera and lens, its first head with its first
 * modifier as key 2 m away, the sky 1 stop under its patch.
 */
export function newSetup(
  shoot: Shoot,
  kit: Kit,
  at: { readonly spotId: string; readonly startClock: string },
): Result<Setup, string> {
  const camera = inOrder(kit.cameras)[0];
  const lens = inOrder(kit.lenses)[0];
  if (camera === undefined || lens === undefined)
    return fail('A setup needs a camera and a lens; the kit has none yet. Add them in Kit.');
  return ok({
    order: orderKeyAtEnd(shoot.setups),
    name: `Setup ${Object.keys(shoot.setups).length + 1}`,
    ...at,
    durationMin: 45,
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
    cameraId: camera[0],
    lensId: lens[0],
    wishFNumber: Math.max(5.6, lens[1].minFNumber),
    lights: firstLight(kit),
    pinnedShutterS: null,
    pinnedFNumber: null,
    pinnedIso: null,
    pinnedFilterIds: null,
    clockPinned: false,
    holdPinned: false,
    framingPinned: false,
  });
}

function firstLight(kit: Kit): Record<string, Light> {
  const head = inOrder(kit.heads)[0];
  const modifier = inOrder(kit.modifiers)[0];
  if (head === undefined || modifier === undefined) return {};
  return {
    key: {
      order: orderKeyAtEnd({}),
      role: 'key',
      stops: 0,
      headId: head[0],
      headCount: 1,
      modifierId: modifier[0],
      diffuser: modifier[1].diffuserStops !== null,
      baffle: false,
      grid: false,
      gelId: null,
      distanceM: 2,
      angleDeg: 40,
      heightM: 2.2,
      pinnedPowerStops: null,
      distancePinned: false,
      modifierPinned: false,
    },
  };
}
