import { judgeRecipe } from '../strobe/judge-recipe.ts';
import { changedCase } from './changed-case.ts';
import { facePlaces } from './face-places.ts';
import { lightInFrame } from './light-in-frame.ts';
import { headsFree } from './recipe-fix-changes.ts';
import { spreadStops, standPosition, type LightStand } from './row-of-faces.ts';
import { setupCase, type SetupCase, type SetupCaseInput } from './setup-case.ts';
import type { SetupChange, SetupFix } from './setup-fix.ts';
import type { SetupSource } from './setup-source.ts';
import { isTooUneven, mostSpreadStops, sideSpreads, type SideSpread } from './side-spread.ts';

/** A change that brings the faces of a side within the limit, and what it costs. */
export type SpreadFix = SetupFix & {
  readonly role: SideSpread['role'];
  /** What is left between best and least lit face. */
  readonly spreadStops: number;
  /** Stops of reach given up; negative where it gains. */
  readonly costsStops: number;
};

/**
 * What would even a key or a fill whose faces differ by more than the setup's limit: farther back,
 * higher, turned off the subject, an equal light from the other side; each by the least that is
 * enough, and solved again for what it costs. Empty where nothing has to be evened.
 */
export function spreadFixes(asked: SetupCaseInput): readonly SpreadFix[] {
  const made = setupCase(asked);
  if (!made.ok || made.value.input === null) return [];
  const base = made.value;
  const nowStops = judgeRecipe(made.value.input).inHandStops;
  return sideSpreads(base.sources, base.setup)
    .filter((side) => isTooUneven(side, base.setup))
    .flatMap((side) =>
      changesFor(base, side).flatMap((change) => {
        const changed = changedCase(asked, base, [change]);
        const after = changed && sideOf(changed.case, side.role);
        if (!changed || !after || isTooUneven(after, base.setup)) return [];
        const { inHandStops } = judgeRecipe(changed.input);
        return [
          {
            changes: [change],
            role: side.role,
            spreadStops: after.faces.spreadStops,
            inHandStops,
            leastInHandStops: inHandStops,
            costsStops: nowStops - inHandStops,
          },
        ];
      }),
    );
}

const sideOf = ({ sources, setup }: SetupCase, role: SideSpread['role']): SideSpread | undefined =>
  sideSpreads(sources, setup).find((side) => side.role === role);

/** The least of each kind that is enough; a side of several lights is evened light by light by hand. */
function changesFor(base: SetupCase, side: SideSpread): readonly SetupChange[] {
  const source = base.sources.find(({ lightId }) => lightId === side.lightIds[0]);
  if (source === undefined || side.lightIds.length > 1) return [];
  return [fartherBack, higher, turnedOff, mirrored].flatMap((find) => find(base, source) ?? []);
}

type Find = (base: SetupCase, source: SetupSource) => SetupChange | null;

const BACK_STEP_M = 0.05;
const FARTHEST_M = 30;

const fartherBack: Find = (base, { light, lightId, stand }) => {
  if (light.distancePinned) return null;
  const found = firstEven(
    base,
    stand,
    { step: BACK_STEP_M, upTo: FARTHEST_M - stand.distanceM },
    (byM) => ({
      distanceM: hundredth(stand.distanceM + byM),
    }),
  );
  return (
    found && { kind: 'distance', lightIds: [lightId], distanceM: found.distanceM, closer: false }
  );
};

const UP_STEP_M = 0.1;
/** As high as somebody holds a head up on a pole, common practice. [lightingPractice] */
const HAND_HELD_HEIGHT_M = 3;

/** Raised where it stands: the tape grows as the head goes up. */
const higher: Find = (base, { light, lightId, stand, carrier }) => {
  if (light.distancePinned || light.bounce !== null) return null;
  const highestM = carrier?.maxHeightM ?? HAND_HELD_HEIGHT_M;
  const { rightM, towardsCameraM } = standPosition(stand, base.setup);
  const found = firstEven(
    base,
    stand,
    { step: UP_STEP_M, upTo: highestM - stand.heightM },
    (byM) => {
      const heightM = hundredth(stand.heightM + byM);
      const upM = heightM - base.setup.faceHeightM;
      return { heightM, distanceM: hundredth(Math.hypot(rightM, towardsCameraM, upM)) };
    },
  );
  return found && { kind: 'height', lightId, heightM: found.heightM, distanceM: found.distanceM };
};

const MOST_FEATHER_DEG = 60;

const turnedOff: Find = (base, { light, lightId, stand }) => {
  if (light.bounce !== null || stand.aim === undefined) return null;
  const { aim } = stand;
  const found = firstEven(
    base,
    stand,
    { step: 1, upTo: MOST_FEATHER_DEG - aim.offAxisDeg },
    (byDeg) => ({
      aim: { ...aim, offAxisDeg: Math.round(aim.offAxisDeg + byDeg) },
    }),
  );
  return found?.aim === undefined
    ? null
    : { kind: 'feather', lightId, featherDeg: found.aim.offAxisDeg, more: true };
};

/** Nearer to the camera's axis than this the other side is the same place. */
const APART_DEG = 10;

const mirrored: Find = (base, { light, lightId, head }) => {
  const newLightId = `${lightId}-mirrored`;
  const offAxisDeg = Math.min(Math.abs(light.angleDeg), 180 - Math.abs(light.angleDeg));
  if (offAxisDeg < APART_DEG || base.setup.lights[newLightId] !== undefined) return null;
  const owned = headsFree(base, light.headId, head.owned) >= light.headCount;
  return { kind: 'mirror', lightId, newLightId, owned };
};

/** The first of ever larger steps at which the faces are even enough, the light not in the picture unless it is there now. */
function firstEven(
  { setup, framing }: SetupCase,
  stand: LightStand,
  steps: { readonly step: number; readonly upTo: number },
  moved: (by: number) => Partial<LightStand>,
): LightStand | null {
  const places = facePlaces(setup);
  const mayBeInFrame = lightInFrame(stand, setup, framing);
  for (let at = 1; at * steps.step <= steps.upTo + 1e-9; at += 1) {
    const there = { ...stand, ...moved(at * steps.step) };
    if (spreadStops(there, setup, places) > mostSpreadStops(setup)) continue;
    if (mayBeInFrame || !lightInFrame(there, setup, framing)) return there;
  }
  return null;
}

const hundredth = (lengthM: number): number => Math.round(lengthM * 100) / 100;
