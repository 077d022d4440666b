import type { DialStep } from '../exposure/dial-scale.ts';
import type { FilterStack } from '../exposure/lens-filter.ts';
import type { FlashSource } from './guide-number.ts';
import type { LightPath } from './light-path.ts';

export type LightRole = 'key' | 'fill' | 'rim' | 'background';
export type HoldUnder = 'patch' | 'frame' | 'incident';

export type RecipeLight = FlashSource & {
  /**
   * Several key or fill entries add on their side, at the stops of the first; every rim and
   * background entry stands alone.
   */
  readonly role: LightRole;
  /** Where its side is to land against the camera setting: 0 mid-grey, fill −1.6 … */
  readonly stops: number;
  /** Lowest power, stops below full: −8 is 1/256. */
  readonly minPowerStops: number;
  /** Step of its power dial. */
  readonly stepStops: number;
  /** t0.1 at full power; absent: short against any shutter. */
  readonly flashDurationS?: number | undefined;
  /** t0.1 at the lowest power; absent: as at full. */
  readonly flashDurationLowestS?: number | undefined;
  /** Nearer than this no fix moves it; absent: 0.5 m. */
  readonly minDistanceM?: number | undefined;
  /** Feathered or bounced, what that costs is in `lossStops`; absent: straight along its axis. */
  readonly path?: LightPath | undefined;
};

export type RecipeCamera = {
  /** Fastest shutter at which the whole picture is open; a leaf shutter states its own. */
  readonly syncShutterS: number;
  readonly slowestShutterS: number;
  readonly baseIso: number;
  readonly maxIso: number;
  /** Clicks of shutter and aperture; absent: third stops. ISO moves in thirds always. */
  readonly step?: DialStep | undefined;
  /** Fastest shutter with high-speed sync; absent: none. */
  readonly fastestShutterS?: number | undefined;
  /** What entering high-speed sync costs against ambient light; absent: 2, until measured. */
  readonly hssLossStops?: number | undefined;
  /** Let the solver itself go above sync speed; otherwise only a pinned shutter does. */
  readonly allowHss?: boolean | undefined;
};

export type RecipePins = {
  readonly shutterS?: number | undefined;
  readonly fNumber?: number | undefined;
  readonly iso?: number | undefined;
  readonly ndStops?: number | undefined;
  /** Where a variable one is among what is pinned: free up to here, in thirds. */
  readonly ndUpToStops?: number | undefined;
  /** By place in `lights`; null: free. */
  readonly powerStops?: readonly (number | null)[] | undefined;
};

export type RecipeInput = {
  /** EV at ISO 100. A null patch (none in this frame is sky) makes the whole frame the reference. */
  readonly sky: { readonly patchEv: number | null; readonly meanEv: number };
  /** On the plane facing the camera, for reach and power: under broken cloud, sun hidden. */
  readonly ambientOnSubjectEv: number;
  /** The same with the sun out, for the unlit face; absent: the same figure. */
  readonly ambientOutEv?: number | undefined;
  readonly incidentEv: number;
  readonly hold: { readonly stops: number; readonly under: HoldUnder };
  /** How far the face without flash must stay under the key. */
  readonly unlitUnderStops: number;
  readonly lights: readonly RecipeLight[];
  readonly camera: RecipeCamera;
  readonly lens: { readonly minFNumber: number; readonly maxFNumber: number };
  /** One entry per ND filter owned. */
  readonly ndStops: readonly number[];
  /** How many of them fit on each other; absent: 2. */
  readonly maxStacked?: number | undefined;
  /** Every stack of them that may be used; absent: any up to `maxStacked`. */
  readonly ndStacks?: readonly FilterStack[] | undefined;
  /** Other filters that stay on the lens, together; they cost flash and ambient alike. */
  readonly otherFilterStops?: number | undefined;
  /** What filters take from this sky beyond that; negative passes more. Absent: nothing. */
  readonly skyFilterStops?: { readonly patch: number; readonly frame: number } | undefined;
  readonly wish?: { readonly fNumber: number } | undefined;
  readonly pins?: RecipePins | undefined;
};

export type LitLight = {
  readonly role: LightRole;
  /** 0 full, −1 half, in the head's own steps. */
  readonly powerStops: number;
  /** Where its own flash alone lands, stops from mid-grey. */
  readonly levelStops: number;
  /** f-number a meter shows for its flash alone at the recipe's ISO, no lens filter. */
  readonly flashMeterFNumber: number;
  /** The same in cord mode at the recipe's shutter, ambient included. */
  readonly totalMeterFNumber: number;
};

export type Recipe = {
  readonly shutterS: number;
  readonly fNumber: number;
  readonly iso: number;
  /** ND together, and which of the owned filters by place in the list. */
  readonly ndStops: number;
  readonly ndFilters: readonly number[];
  readonly highSpeedSync: boolean;
  readonly lights: readonly LitLight[];
  /** All lights on and ambient, at the key's face, cord mode at this shutter and ISO, no lens filter. */
  readonly meterFNumber: number;
  /** Share of the flash in that reading, 0 to 1. */
  readonly flashShare: number;
  /** Scene EV that these settings render as mid-grey. */
  readonly cameraEv: number;
  /** Against mid-grey: the hold's reference part of the sky, and each reference by itself. */
  readonly skyStops: number;
  readonly patchStops: number;
  readonly frameStops: number;
  readonly incidentStops: number;
  /** Key's face, all lights and ambient. */
  readonly keyStops: number;
  /** Fill with ambient, no key; null without a fill. */
  readonly fillStops: number | null;
  /** The face with no flash at all; with the sun out, where that differs. */
  readonly unlitStops: number;
  readonly unlitOutStops: number;
  /** Reach less reference: what the sky could still be brighter. */
  readonly inHandStops: number;
  /** Brightest sky, at the hold's reference, that every light still meets. */
  readonly reachEv: number;
  /** The role that would run out first; null without lights. */
  readonly limitingRole: LightRole | null;
};

export type RecipeProblemKind =
  | 'sky-above-reach'
  | 'ambient-lights-the-face'
  | 'head-too-strong'
  | 'no-setting'
  | 'bad-input';

/** Which end a 'no-setting' ran into. */
export type SettingLimit = 'too-dark' | 'too-bright' | 'between';

export type FixKind =
  | 'distance'
  | 'second-head'
  | 'sync-shutter'
  | 'slower-shutter'
  | 'hold'
  | 'unlit-under'
  | 'shade'
  | 'leave-out'
  | 'head-nd'
  | 'nd'
  | 'unpin-shutter'
  | 'unpin-aperture'
  | 'unpin-iso'
  | 'unpin-nd'
  | 'unpin-power'
  | 'pair';

export type Fix = {
  readonly kind: FixKind;
  /**
   * New metres, heads, seconds, stops under or under the key; stops of shade, of ND
   * on the lens or of ND gel on a head to add; lights
   * to leave out; stops a pin costs; 2 for a pair.
   */
  readonly value: number;
  readonly unit: 'm' | 'heads' | 's' | 'stops' | 'lights' | 'fixes';
  readonly role?: LightRole | undefined;
  /** Places in `lights` that it changes. */
  readonly lights?: readonly number[] | undefined;
  /** Both halves of a pair. */
  readonly parts?: readonly Fix[] | undefined;
};

export type RecipeProblem = {
  readonly kind: RecipeProblemKind;
  readonly shortByStops: number;
  readonly role?: LightRole | undefined;
  /** Places in `lights` of the side that is named. */
  readonly lights?: readonly number[] | undefined;
  readonly limit?: SettingLimit | undefined;
  readonly fixes: readonly Fix[];
  /** For 'bad-input': what was found and what was expected. */
  readonly sentences?: readonly string[] | undefined;
};
