import { polarisedShare, polariserRange } from '../sky/polarised-sky.ts';
import type { RecipeProblem } from '../strobe/recipe.ts';
import { wrapDeg360 } from '../units/angle.ts';
import type { SetupCase, SetupCaseInput } from './setup-case.ts';
import type { SetupChange } from './setup-fix.ts';
import { inOrder } from './order-key.ts';
import { setupSource } from './setup-source.ts';

/** Changes of one kind, from the lightest to the heaviest; the first that works is offered. */
export type FixFamily = readonly SetupChange[];

type Asked = {
  readonly asked: SetupCaseInput;
  readonly base: SetupCase;
  readonly problem: Omit<RecipeProblem, 'fixes'>;
};

/** What the document offers beyond what the recipe's own figures do. */
export function fixFamilies(asked: Asked): readonly FixFamily[] {
  const { problem, base } = asked;
  switch (problem.kind) {
    case 'sky-above-reach':
      return [
        ...partsOff(asked),
        ...straighter(asked),
        ...harderModifiers(asked),
        ...(base.setup.framingPinned ? [] : otherViews(asked)),
        polariser(asked),
      ];
    case 'ambient-lights-the-face':
      return [shade(asked), ...(base.setup.framingPinned ? [] : turns(asked))];
    case 'head-too-strong':
      return partsOn(asked);
    case 'no-setting':
    case 'bad-input':
      return [];
  }
}

const PARTS = ['grid', 'baffle', 'diffuser'] as const;

/** Lights of the side that is named. */
const named = ({ base, problem }: Asked): SetupCase['sources'] =>
  base.sources.filter((_, place) => problem.lights?.includes(place) === true);

const partsOff = (asked: Asked): FixFamily[] =>
  named(asked)
    .filter(({ light }) => !light.modifierPinned)
    .flatMap(({ lightId, light, modifier }) =>
      PARTS.filter((part) => light[part] && (modifier[`${part}Stops`] ?? 0) > 0).map(
        (part): FixFamily => [{ kind: 'part-off', lightId, part }],
      ),
    );

const partsOn = (asked: Asked): FixFamily[] =>
  named(asked)
    .filter(({ light }) => !light.modifierPinned)
    .flatMap(({ lightId, light, modifier }) =>
      PARTS.filter((part) => !light[part] && (modifier[`${part}Stops`] ?? 0) > 0).map(
        (part): FixFamily => [{ kind: 'part-on', lightId, part }],
      ),
    );

/** Aimed instead of bounced, or turned less off the subject, a degree at a time. */
const straighter = (asked: Asked): FixFamily[] =>
  named(asked).flatMap(({ lightId, light }): FixFamily[] => {
    if (light.bounce !== null) return [[{ kind: 'aim', lightId }]];
    const less: SetupChange[] = [];
    for (let featherDeg = Math.ceil(light.featherDeg) - 1; featherDeg >= 0; featherDeg -= 1)
      less.push({ kind: 'feather', lightId, featherDeg, more: false });
    return less.length === 0 ? [] : [less];
  });

/** Other modifiers of the kit that give more light, the softest of them first. */
function harderModifiers(asked: Asked): FixFamily[] {
  const { base } = asked;
  const { kit } = asked.asked;
  return named(asked)
    .filter(({ light }) => !light.modifierPinned)
    .map((source): FixFamily => {
      const { lightId, light, output } = source;
      const now = { diffuser: light.diffuser, baffle: false, grid: false };
      const level = (figure: typeof output): number =>
        2 * Math.log2(figure.guideNumberM) - figure.lossStops;
      return inOrder(kit.modifiers)
        .filter(([modifierId]) => modifierId !== light.modifierId)
        .map(([modifierId, modifier]) => {
          const parts = { ...now, diffuser: modifier.diffuserStops !== null };
          const changed = { ...light, ...parts, modifierId };
          const other = setupSource({ ...source, light: changed, modifier }, kit, base.setup);
          return { modifierId, parts, level: level(other.output) };
        })
        .filter((other) => other.level > level(output))
        .toSorted((first, second) => first.level - second.level)
        .map(({ modifierId, parts }) => ({ kind: 'modifier', lightId, modifierId, light: parts }));
    });
}

const TURN_STEP_DEG = 5;
const FARTHEST_TURN_DEG = 120;

function turns({ base }: Asked): FixFamily[] {
  const { bearingDeg } = base.framing;
  const family: SetupChange[] = [];
  for (let turnDeg = TURN_STEP_DEG; turnDeg <= FARTHEST_TURN_DEG; turnDeg += TURN_STEP_DEG)
    for (const side of [1, -1])
      family.push({
        kind: 'bearing',
        bearingDeg: wrapDeg360(Math.round(bearingDeg) + side * turnDeg),
        sunBehind: false,
      });
  return [sunBehind(base), family];
}

/** So low the sun hides behind a head and shoulders. */
const HIDEABLE_DEG = 25;

function sunBehind({ light, framing }: SetupCase): FixFamily {
  const { apparentAltitudeDeg, azimuthDeg } = light.sun;
  const bearingDeg = wrapDeg360(Math.round(azimuthDeg));
  if (apparentAltitudeDeg < 0 || apparentAltitudeDeg > HIDEABLE_DEG) return [];
  if (bearingDeg === Math.round(framing.bearingDeg)) return [];
  return [{ kind: 'bearing', bearingDeg, sunBehind: true }];
}

const HIGHEST_TILT_DEG = 30;
const FOCAL_STEP = 1.1;

function otherViews(asked: Asked): FixFamily[] {
  const { base } = asked;
  const { framing } = base;
  const tilts: SetupChange[] = [];
  for (let tiltDeg = Math.ceil(framing.tiltDeg + 1); tiltDeg <= HIGHEST_TILT_DEG; tiltDeg += 1)
    tilts.push({ kind: 'tilt', tiltDeg });
  const lens = asked.asked.kit.lenses[base.setup.lensId];
  const longest = lens?.maxFocalLengthMm ?? framing.focalLengthMm;
  const lengths: SetupChange[] = [];
  for (
    let times = FOCAL_STEP;
    framing.focalLengthMm * times <= longest * 1.001;
    times *= FOCAL_STEP
  ) {
    const focalLengthMm = Math.round(framing.focalLengthMm * times);
    const cameraDistanceM =
      Math.round((framing.cameraDistanceM * focalLengthMm * 10) / framing.focalLengthMm) / 10;
    lengths.push({ kind: 'focal-length', focalLengthMm, cameraDistanceM });
  }
  return [...turns(asked), tilts, lengths];
}

const shade = ({ base }: Asked): FixFamily => (base.setup.shaded ? [] : [{ kind: 'shade' }]);

/** Owned and not on yet, clear or hazy sky, and not near the sun: as far as turning it darkens. [rayleighScattering] */
function polariser({ asked, base }: Asked): FixFamily {
  const owned = Object.values(asked.kit.filters).some(({ kind }) => kind === 'polariser');
  const blue = base.scene.condition === 'clear' || base.scene.condition === 'haze';
  const { sun } = base.light;
  const isOn = base.question.skyFilters?.polariser === true;
  if (!owned || isOn || !blue || sun.apparentAltitudeDeg < 0) return [];
  const share = polarisedShare(
    base.scene.condition,
    sun,
  )({ azimuthDeg: base.framing.bearingDeg, altitudeDeg: base.framing.tiltDeg });
  const upToStops = Math.round(polariserRange(share).mostStops * 10) / 10;
  return upToStops < 0.1 ? [] : [{ kind: 'polariser', upToStops }];
}
