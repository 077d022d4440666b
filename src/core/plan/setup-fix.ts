import type { Edit } from './edits.ts';
import {
  addLight,
  editLight,
  editSetup,
  editSetupFraming,
  removeLight,
  together,
} from './edits.ts';
import { orderKeyAtEnd } from './order-key.ts';
import type { Light } from './setup-schema.ts';
import type { Shoot } from './shoot.ts';

/** One change of a setup, or of what has to be owned for it; plain data. */
export type SetupChange =
  | { readonly kind: 'distance'; readonly lightIds: readonly string[]; readonly distanceM: number; readonly closer: boolean }
  | { readonly kind: 'part-off' | 'part-on'; readonly lightId: string; readonly part: 'diffuser' | 'baffle' | 'grid' }
  | { readonly kind: 'modifier'; readonly lightId: string; readonly modifierId: string; readonly light: Pick<Light, 'diffuser' | 'baffle' | 'grid'> }
  | { readonly kind: 'heads'; readonly lightId: string; readonly headCount: number; readonly owned: boolean }
  | { readonly kind: 'mirror'; readonly lightId: string; readonly newLightId: string; readonly owned: boolean }
  | { readonly kind: 'height'; readonly lightId: string; readonly heightM: number; readonly distanceM: number }
  | { readonly kind: 'feather'; readonly lightId: string; readonly featherDeg: number; readonly more: boolean }
  | { readonly kind: 'aim'; readonly lightId: string }
  | { readonly kind: 'stand'; readonly lightId: string; readonly standId: string | null; readonly modifierId: string; readonly light: Pick<Light, 'diffuser' | 'baffle' | 'grid'> }
  | { readonly kind: 'leave-out'; readonly lightIds: readonly string[] }
  | { readonly kind: 'camera'; readonly cameraId: string; readonly syncShutterS: number }
  | { readonly kind: 'lens'; readonly lensId: string; readonly syncShutterS: number }
  | { readonly kind: 'sync-shutter'; readonly shutterS: number }
  | { readonly kind: 'clock'; readonly clock: string; readonly later: boolean }
  | { readonly kind: 'hold'; readonly holdStops: number; readonly deeper: boolean }
  | { readonly kind: 'unlit-under'; readonly unlitUnderStops: number }
  | { readonly kind: 'shade' }
  | { readonly kind: 'tripod' }
  | { readonly kind: 'bearing'; readonly bearingDeg: number; readonly sunBehind: boolean }
  | { readonly kind: 'tilt'; readonly tiltDeg: number }
  | { readonly kind: 'focal-length'; readonly focalLengthMm: number; readonly cameraDistanceM: number }
  | { readonly kind: 'polariser'; readonly upToStops: number }
  | { readonly kind: 'nd'; readonly stops: number }
  | { readonly kind: 'head-nd'; readonly lightIds: readonly string[]; readonly stops: number }
  | { readonly kind: 'unpin'; readonly pin: 'shutter' | 'aperture' | 'iso' | 'filters' | 'power'; readonly lightIds: readonly string[]; readonly costsStops: number }; // prettier-ignore

/** A change, or the two lightest together, solved again. */
export type SetupFix = {
  readonly changes: readonly SetupChange[];
  /** What is left against the reach when it is made; for a range, at its far end. */
  readonly inHandStops: number;
  /** Where the gain is a range: what is left at its near end. */
  readonly leastInHandStops: number;
};

/** The edit that makes a change; null where it needs something that the kit does not hold. */
export function changeEdit(setupId: string, change: SetupChange): Edit<Shoot> | null {
  switch (change.kind) {
    case 'distance':
      return together(
        ...change.lightIds.map((id) => editLight(setupId, id, { distanceM: change.distanceM })),
      );
    case 'part-off':
      return editLight(setupId, change.lightId, { [change.part]: false });
    case 'part-on':
      return editLight(setupId, change.lightId, { [change.part]: true });
    case 'modifier':
      return editLight(setupId, change.lightId, {
        modifierId: change.modifierId,
        ...change.light,
      });
    case 'heads':
      return editLight(setupId, change.lightId, { headCount: change.headCount });
    case 'mirror':
      return mirrorEdit(setupId, change);
    case 'height':
      return editLight(setupId, change.lightId, {
        heightM: change.heightM,
        distanceM: change.distanceM,
      });
    case 'feather':
      return editLight(setupId, change.lightId, { featherDeg: change.featherDeg });
    case 'aim':
      return editLight(setupId, change.lightId, { bounce: null });
    case 'stand':
      return editLight(setupId, change.lightId, {
        standId: change.standId,
        modifierId: change.modifierId,
        ...change.light,
      });
    case 'leave-out':
      return together(...change.lightIds.map((id) => removeLight(setupId, id)));
    case 'camera':
      return editSetup(setupId, { cameraId: change.cameraId });
    case 'lens':
      return editSetup(setupId, { lensId: change.lensId });
    case 'clock':
      return editSetup(setupId, { startClock: change.clock });
    case 'hold':
      return editSetup(setupId, { holdStops: change.holdStops });
    case 'unlit-under':
      return editSetup(setupId, { unlitUnderStops: change.unlitUnderStops });
    case 'shade':
      return editSetup(setupId, { shaded: true });
    case 'tripod':
      return editSetup(setupId, { tripod: true });
    case 'bearing':
      return editSetupFraming(setupId, { bearingDeg: change.bearingDeg });
    case 'tilt':
      return editSetupFraming(setupId, { tiltDeg: change.tiltDeg });
    case 'focal-length':
      return editSetupFraming(setupId, {
        focalLengthMm: change.focalLengthMm,
        cameraDistanceM: change.cameraDistanceM,
      });
    case 'unpin':
      return unpinEdit(setupId, change);
    case 'sync-shutter':
    case 'polariser':
    case 'nd':
    case 'head-nd':
      return null;
  }
}

/** An equal light from the other side of the camera's axis. */
const mirrorEdit =
  (setupId: string, change: Extract<SetupChange, { kind: 'mirror' }>): Edit<Shoot> =>
  (shoot) => {
    const lights = shoot.setups[setupId]?.lights;
    const light = lights?.[change.lightId];
    if (lights === undefined || light === undefined) return;
    const other = { ...light, order: orderKeyAtEnd(lights), angleDeg: -light.angleDeg };
    addLight(setupId, change.newLightId, other)(shoot);
  };

function unpinEdit(
  setupId: string,
  { pin, lightIds }: Extract<SetupChange, { kind: 'unpin' }>,
): Edit<Shoot> {
  switch (pin) {
    case 'shutter':
      return editSetup(setupId, { pinnedShutterS: null });
    case 'aperture':
      return editSetup(setupId, { pinnedFNumber: null });
    case 'iso':
      return editSetup(setupId, { pinnedIso: null });
    case 'filters':
      return editSetup(setupId, { pinnedFilterIds: null });
    case 'power':
      return together(...lightIds.map((id) => editLight(setupId, id, { pinnedPowerStops: null })));
  }
}

/** The edit of a whole fix; null where one of its changes has none. */
export function fixEdit(setupId: string, fix: SetupFix): Edit<Shoot> | null {
  const edits = fix.changes.map((change) => changeEdit(setupId, change));
  return edits.every((edit) => edit !== null) ? together(...edits) : null;
}
