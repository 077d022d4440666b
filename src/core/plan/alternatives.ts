import { produce } from 'immer';

import { circleOfConfusionMm, depthOfField, type SharpZone } from '../exposure/depth-of-field.ts';
import type { Edit } from './edits.ts';
import { editLight, editSetup, together } from './edits.ts';
import { inOrder } from './order-key.ts';
import type { SetupCaseInput } from './setup-case.ts';
import { setupView, type SetupView } from './setup-view.ts';
import type { Shoot } from './shoot.ts';

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
    };

export type Alternative = {
  readonly way: OtherWay;
  /** Solved and run forward; its answer may be a shortage. */
  readonly view: SetupView;
  readonly sharp: SharpZone | null;
};

/** The planned way first, then the others that kit and camera allow, each solved on the changed document. */
export function alternatives(asked: SetupCaseInput): readonly Alternative[] {
  return otherWays(asked).flatMap((way) => {
    const shoot = produce(asked.shoot, (draft) => wayEdit(asked, way)(draft));
    const view = setupView({ ...asked, shoot });
    return view.ok ? [{ way, view: view.value, sharp: sharpZone(view.value) }] : [];
  });
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
  ];
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
