import { type Daylight, daylightAt, MOONLIGHT_BELOW_DEG } from '../daylight/daylight-at.ts';
import { SKY_CONDITION_TRAITS, type SkyCondition } from '../daylight/sky-condition.ts';
import { ev100FromDomeIlluminance, ev100FromIlluminance } from '../exposure/exposure-value.ts';
import type { GeoPoint } from '../place/geo-point.ts';
import type { FilteredFrame, SkyFilters } from '../sky/filtered-frame.ts';
import type { FrameReading } from '../sky/frame-reading.ts';
import type { Framing } from '../sky/framing.ts';
import type { Patch } from '../sky/patch.ts';
import { frameSamples, withPatch } from '../sky/frame-samples.ts';
import { fillLuminance, skyField } from '../sky/sky-field.ts';
import { skyModel, skyPoints } from '../sky/sky-model.ts';
import type { Skyline } from '../skyline/skyline.ts';
import { readSkylight, type SubjectIlluminance, withBeam } from '../subject/subject-reading.ts';
import { subjectSamples } from '../subject/subject-samples.ts';
import { moonPosition } from '../sun-moon/moon-position.ts';
import { type SunPosition, sunPosition } from '../sun-moon/sun-position.ts';
import { frameReader } from './frame-reader.ts';
import { frameSpreads } from './frame-spreads.ts';

export type SpotScene = {
  readonly place: GeoPoint;
  readonly framing: Framing;
  /** Without one the whole sky in the frame is the reference. */
  readonly patch?: Patch | null | undefined;
  readonly skyline: Skyline;
  /** 0 to 1. */
  readonly groundReflectance: number;
  readonly condition: SkyCondition;
  /** Filters on the lens that part the sky; absent or null: none. */
  readonly skyFilters?: SkyFilters | null | undefined;
};

/** EV at ISO 100. The subject looks at the camera. */
export type SpotLight = {
  readonly sun: SunPosition;
  readonly daylight: Daylight;
  /** Null when the frame shows no sky. */
  readonly skyInFrame: FrameReading | null;
  /** The same behind the filters that part it; null without them. */
  readonly filteredSky: FilteredFrame | null;
  /** ± stops round the frame's and the patch's EV; eight of ten minutes lie inside. */
  readonly frameSpreadStops: number;
  readonly patchSpreadStops: number;
  /** Under broken cloud with the sun hidden, else with whatever beam there is. */
  readonly subject: SubjectIlluminance;
  /** Under broken cloud with the sun out between the clouds, else the same as `subject`. */
  readonly subjectSunOut: SubjectIlluminance;
  /** Plane to the camera (C 250), of `subject`: what adds to the key on the face. The reach counts on it. */
  readonly ambientOnSubjectEv: number;
  /** The same as `ambientOnSubjectEv`, named for the band that broken cloud makes. */
  readonly ambientHiddenEv: number;
  /** Of `subjectSunOut`: the unlit face is judged by it. */
  readonly ambientOutEv: number;
  /** `ambientOutEv` with a panel that keeps the sun's beam off the subject and hides no sky. */
  readonly ambientShadedEv: number;
  /** What a dome meter reads (C 330), of `subject`. */
  readonly incidentEv: number;
};

export type SpotInstant = {
  readonly instantMs: number;
  /** Of the spot's civil date, 1 to 366. */
  readonly dayOfYear: number;
};

/** The light at a spot as a function of time. [iso2720] */
export const spotLight = (scene: SpotScene): ((instant: SpotInstant) => SpotLight) =>
  spotLightByPatch(scene)(scene.patch);

/** The same for any patch of one frame. What does not change with the sun is worked out once. */
export const spotLightByPatch = (
  scene: Omit<SpotScene, 'patch'>,
): ((patch: SpotScene['patch']) => (instant: SpotInstant) => SpotLight) => {
  const { place, condition, groundReflectance } = scene;
  const model = skyModel(condition);
  const samples = frameSamples(scene);
  const subjectAt = subjectSamples({
    skyline: scene.skyline,
    facingDeg: scene.framing.bearingDeg + 180,
  });
  const subjectPoints = skyPoints(model.standard, subjectAt.directions);
  const subjectCdM2 = new Float64Array(subjectAt.directions.length);

  return (patch) => {
    const readSky = frameReader(samples === null ? null : withPatch(samples, patch), model, scene);
    const spreadsOf = frameSpreads({ ...scene, patch });
    return ({ instantMs, dayOfYear }) => {
      const sun = sunPosition(instantMs, place);
      const moon =
        sun.trueAltitudeDeg < MOONLIGHT_BELOW_DEG ? moonPosition(instantMs, place) : undefined;
      const elevationM = place.elevationM ?? 0;
      const daylight = daylightAt({ sun, condition, dayOfYear, elevationM, moon });
      const field = skyField(model, { sun, daylight });

      fillLuminance(field, subjectPoints, subjectCdM2);
      const skylight = readSkylight(subjectAt, subjectCdM2);
      const litBy = (beamNormalLux: number): SubjectIlluminance =>
        withBeam(subjectAt, skylight, { sun, beamNormalLux, groundReflectance });
      const inTwoStates = SKY_CONDITION_TRAITS[condition].beam === 'between-clouds';
      const subject = litBy(inTwoStates ? 0 : daylight.beamNormalLux);
      const subjectSunOut = inTwoStates ? litBy(daylight.clearBeamNormalLux) : subject;

      const read = readSky(field, sun);
      const skyInFrame = read?.plain ?? null;
      const { frameSpreadStops, patchSpreadStops } = spreadsOf(sun, skyInFrame);
      const ambientOnSubjectEv = ev100FromIlluminance(subject.planeLux);
      return {
        sun,
        daylight,
        skyInFrame,
        filteredSky: read?.filtered ?? null,
        frameSpreadStops,
        patchSpreadStops,
        subject,
        subjectSunOut,
        ambientOnSubjectEv,
        ambientHiddenEv: ambientOnSubjectEv,
        ambientOutEv: ev100FromIlluminance(subjectSunOut.planeLux),
        ambientShadedEv: ev100FromIlluminance(subjectSunOut.planeLux - subjectSunOut.beamPlaneLux),
        incidentEv: ev100FromDomeIlluminance(subject.domeLux),
      };
    };
  };
};
