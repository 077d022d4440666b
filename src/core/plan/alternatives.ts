import { produce } from 'immer';

import { shiftedKelvin } from '../colour/mired.ts';
import { circleOfConfusionMm, depthOfField, type SharpZone } from '../exposure/depth-of-field.ts';
import type { Edit } from './edits.ts';
import { editLight, editSetup, together } from './edits.ts';
import { inOrder } from './order-key.ts';
import type { SetupCaseInput } from './setup-case.ts';
import { setupView, type SetupView } from './setup-view.ts';
import type { Shoot } from './shoot.ts';
import type { Kit } from './kit.ts';
import type { Setup } from './setup-schema.ts';

/** Another way to the same sky, plain data. */
export type OtherWay =
  | { readonly kind: 'as-planned' }
  | { readonly kind: 'stop-down' }
  | { readonly kind: 'open-behind-nd' }
  | { readonly kind: 'high-speed-sync' }
  | {
      readonly kind: 'other-modifier';
      readonly lightId: string;
      readonly modifierId: string;
      readonly diffuser: boolean;
    }
  /** The key off a white wall or panel. */
  | { readonly kind: 'bounced-key'; readonly lightId: string; readonly reflectance: number }
  /** The warmest gel on every light, the camera set to what it makes of them. */
  | { readonly kind: 'warm-gels'; readonly gelId: string; readonly whiteBalanceKelvin: number };

export type Alternative = {
  readonly way: OtherWay;
  /** Solved and run forward; its answer may be a shortage. */
  readonly view: SetupView;
  readonly sharp: SharpZone | null;
  /** What has to come along beside what the plan takes, and what may stay, by name. */
  readonly carry: { readonly more: readonly string[]; readonly less: readonly string[] };
};

/** The planned way first, then the others that kit and camera allow, each solved on the changed document. */
export function alternatives(asked: SetupCaseInput): readonly Alternative[] {
  const found = otherWays(asked).flatMap((way) => {
    const shoot = produce(asked.shoot, (draft) => wayEdit(asked, way)(draft));
    const view = setupView({ ...asked, shoot });
    return view.ok ? [{ way, view: view.value }] : [];
  });
  const planned = carriedBy(found[0]?.view);
  return found.map(({ way, view }) => {
    const carried = carriedBy(view);
    return {
      way,
      view,
      sharp: sharpZone(view),
      carry: {
        more: [...carried].filter((name) => !planned.has(name)),
        less: [...planned].filter((name) => !carried.has(name)),
      },
    };
  });
}

/** Names of what a setup takes to its place, heads and camera left aside: every way has those. */
function carriedBy(view: SetupView | undefined): ReadonlySet<string> {
  if (view === undefined) return new Set();
  const filters = view.answer.ok ? view.answer.value.filters : [];
  return new Set([
    ...view.sources.flatMap(({ modifier, gel, secondGel, light }) => [
      modifier.name,
      ...[gel, secondGel].flatMap((one) => (one === null ? [] : [one.name])),
      ...(light.bounce === null ? [] : ['a white panel, where there is no wall']),
    ]),
    ...filters.map(({ name }) => name),
  ]);
}

function otherWays({ shoot, kit, setupId }: SetupCaseInput): readonly OtherWay[] {
  const setup = shoot.setups[setupId];
  if (setup === undefined) return [];
  const key = inOrder(setup.lights).find(([, light]) => light.role === 'key');
  const modifiers = inOrder(kit.modifiers)
    .filter(([modifierId]) => key !== undefined && modifierId !== key[1].modifierId)
    .map(([modifierId, modifier]): OtherWay => ({
      kind: 'other-modifier',
      lightId: key?.[0] ?? '',
      modifierId,
      diffuser: modifier.diffuserStops !== null,
    }));
  return [
    { kind: 'as-planned' },
    { kind: 'stop-down' },
    { kind: 'open-behind-nd' },
    { kind: 'high-speed-sync' },
    ...modifiers,
    ...(key === undefined || key[1].bounce !== null
      ? []
      : [{ kind: 'bounced-key' as const, lightId: key[0], reflectance: whitestOf(shoot, setup) }]),
    ...warmGels(kit, setup),
  ];
}

/** A white reflector panel's, common practice. [lightingPractice] */
const PANEL_REFLECTANCE = 0.8;

/** The lightest wall or panel noted at the spot, or else a white panel of one's own. */
const whitestOf = (shoot: Shoot, setup: Setup): number =>
  Object.values(shoot.spots[setup.spotId]?.surfaces ?? {})
    .filter(({ kind }) => kind !== 'ground')
    .reduce((most, { reflectance }) => Math.max(most, reflectance), PANEL_REFLECTANCE);

/** From this shift on a gel turns daylight balance into another picture. [lightingPractice] */
const LEAST_WARM_MIRED = 60;

function warmGels(kit: Kit, setup: Setup): readonly OtherWay[] {
  const warmest = inOrder(kit.gels)
    .filter(([, gel]) => gel.miredShift >= LEAST_WARM_MIRED)
    .toSorted(([, one], [, other]) => other.miredShift - one.miredShift)[0];
  const head = kit.heads[inOrder(setup.lights)[0]?.[1].headId ?? ''];
  if (warmest === undefined || head === undefined) return [];
  const whiteBalanceKelvin =
    Math.round(shiftedKelvin(head.flashKelvin, warmest[1].miredShift) / 50) * 50;
  return [{ kind: 'warm-gels', gelId: warmest[0], whiteBalanceKelvin }];
}

/** The edit that takes another way. */
export function wayEdit({ shoot, kit, setupId }: SetupCaseInput, way: OtherWay): Edit<Shoot> {
  const setup = shoot.setups[setupId];
  const lens = setup && kit.lenses[setup.lensId];
  const camera = setup && kit.cameras[setup.cameraId];
  const free = { pinnedFNumber: null, pinnedIso: null, pinnedShutterS: null };
  switch (way.kind) {
    case 'as-planned':
      return () => undefined;
    case 'stop-down':
      return editSetup(setupId, {
        ...free,
        pinnedFilterIds: {},
        wishFNumber: lens?.maxFNumber ?? 22,
      });
    case 'open-behind-nd':
      return editSetup(setupId, {
        ...free,
        pinnedFilterIds: null,
        wishFNumber: lens?.minFNumber ?? 2.8,
      });
    case 'high-speed-sync':
      return editSetup(setupId, {
        ...free,
        pinnedFilterIds: {},
        pinnedShutterS: hssShutterS(camera?.syncShutterS ?? 1 / 250, camera?.fastestShutterS),
        wishFNumber: lens?.minFNumber ?? 2.8,
      });
    case 'other-modifier':
      return together(
        editLight(setupId, way.lightId, {
          modifierId: way.modifierId,
          diffuser: way.diffuser,
          baffle: false,
          grid: false,
        }),
      );
    case 'bounced-key': {
      const light = setup?.lights[way.lightId];
      return editLight(setupId, way.lightId, {
        bounce: {
          reflectance: way.reflectance,
          colour: '',
          headToSurfaceM: 1.5,
          incidenceDeg: 30,
          exitDeg: 30,
          panelSideM: null,
        },
        distanceM: light?.distanceM ?? 2,
      });
    }
    case 'warm-gels':
      return together(
        editSetup(setupId, { whiteBalanceKelvin: way.whiteBalanceKelvin }),
        ...Object.keys(setup?.lights ?? {}).map((lightId) =>
          editLight(setupId, lightId, { gelId: way.gelId, secondGelId: null }),
        ),
      );
  }
}

/** Two stops over sync, where most high-speed sync is used; the cost does not depend on it. */
const hssShutterS = (syncShutterS: number, fastestShutterS = 1 / 8000): number =>
  Math.max(fastestShutterS, syncShutterS / 4);

function sharpZone(view: SetupView): SharpZone | null {
  if (!view.answer.ok) return null;
  return depthOfField({
    focalLengthMm: view.framing.focalLengthMm,
    fNumber: view.answer.value.recipe.fNumber,
    circleMm: circleOfConfusionMm(view.framing),
    focusDistanceM: view.framing.cameraDistanceM,
  });
}
