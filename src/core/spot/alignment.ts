import { projection, type PicturePoint } from '../sky/framing.ts';
import { discShareAbove, skylineAltitude } from '../skyline/skyline.ts';
import { moonDirection, moonPosition } from '../sun-moon/moon-position.ts';
import { sunPosition } from '../sun-moon/sun-position.ts';
import { addDays, civilDateOf, dayBoundsMs } from '../units/civil-time.ts';
import { angleBetweenDeg, type Direction } from '../units/direction.ts';
import { fail, ok, type Result } from '../units/result.ts';
import { alignmentFaults, type AlignmentQuestion } from './alignment-question.ts';
import { nearestMinutes, nearestOf, unbrokenRuns } from './nearest-minutes.ts';

/** Sun or moon at a whole minute, and how far from where it is wanted. */
export type StandingBody = Direction & { readonly instantMs: number; readonly missDeg: number };

/** Whole minutes of one date, one after the other, at which the body stands as wanted. */
export type Alignment = {
  /** 'YYYY-MM-DD' in the spot's zone. */
  readonly date: string;
  readonly firstMs: number;
  readonly lastMs: number;
  /** The minute of the least miss. */
  readonly best: StandingBody & {
    /** Where it stands in the picture then; null behind the camera. */
    readonly inPicture: PicturePoint | null;
    /** Share of the disc above skyline and horizon, over 0; the moon's radius is taken as the sun's. */
    readonly discShare: number;
  };
  /** Share of the moon's disc that is lit, 0 to 1; null for the sun. */
  readonly illuminatedFraction: number | null;
};

export type AlignmentDays = {
  readonly alignments: readonly Alignment[];
  /** Dates on which it stands there only behind the skyline. */
  readonly hiddenDates: number;
};

/** Why there is no date. */
export type AlignmentProblem =
  | { readonly kind: 'bad-input'; readonly sentences: readonly string[] }
  /** The point itself lies below the skyline or, where that is lower, the level horizon. */
  | { readonly kind: 'below-skyline'; readonly skylineDeg: number; readonly pointDeg: number }
  | { readonly kind: 'hidden'; readonly hiddenDates: number }
  | { readonly kind: 'never-near'; readonly nearest: StandingBody & { readonly date: string } };

/** Between two reports of progress, about a fiftieth of a second. */
const LOOKS_A_STEP = 6000;

/**
 * The minutes at which sun or moon stands at a point of the picture, over the skyline, date by
 * date: whole minutes counted from the start of each date in its zone, by the apparent place of
 * the disc's centre as seen from the spot. Yields how much is done, 0 to 1.
 */
export function* alignmentDays(
  question: AlignmentQuestion,
): Generator<number, Result<AlignmentDays, AlignmentProblem>> {
  const sentences = alignmentFaults(question);
  if (sentences.length > 0) return fail({ kind: 'bad-input', sentences });

  const { body, place, zone, days, toleranceDeg } = question;
  const { toDirection, toPicture } = projection(question.framing);
  const altitudeOfEdge = skylineAltitude(question.skyline);
  const edgeDeg = (azimuthDeg: number): number => Math.max(0, altitudeOfEdge(azimuthDeg));
  const discShare = ({ azimuthDeg, altitudeDeg }: Direction): number =>
    discShareAbove({ apparentAltitudeDeg: altitudeDeg }, edgeDeg(azimuthDeg));
  const positionOf = body === 'sun' ? sunPosition : moonDirection;
  const wanted = toDirection(question.wanted);

  let looks = 0;
  const look = (instantMs: number): StandingBody => {
    looks += 1;
    const { azimuthDeg, apparentAltitudeDeg } = positionOf(instantMs, place);
    const direction = { azimuthDeg, altitudeDeg: apparentAltitudeDeg };
    return { ...direction, instantMs, missDeg: angleBetweenDeg(direction, wanted) };
  };

  const alignments: Alignment[] = [];
  let hiddenDates = 0;
  let nearest: StandingBody | null = null;
  for (let day = 0; day < days; day += 1) {
    const date = addDays(question.fromDate, day);
    const nearestDeg: number = nearest?.missDeg ?? Infinity;
    const minutes = nearestMinutes(dayBoundsMs(date, zone), look, { toleranceDeg, nearestDeg });
    const newest = nearestOf(minutes);
    if (newest !== null && newest.missDeg < nearestDeg) nearest = newest;

    const near = minutes.filter(({ missDeg }) => missDeg <= toleranceDeg);
    const seen = near.filter((minute) => discShare(minute) > 0);
    if (near.length > 0 && seen.length === 0) hiddenDates += 1;
    for (const run of unbrokenRuns(seen)) {
      const [first, last, best] = [run[0], run.at(-1), nearestOf(run)];
      if (first === undefined || last === undefined || best === null) continue;
      alignments.push({
        date,
        firstMs: first.instantMs,
        lastMs: last.instantMs,
        best: { ...best, inPicture: toPicture(best), discShare: discShare(best) },
        illuminatedFraction:
          body === 'moon' ? moonPosition(best.instantMs, place).illuminatedFraction : null,
      });
    }
    if (looks < LOOKS_A_STEP) continue;
    looks = 0;
    yield (day + 1) / days;
  }

  if (alignments.length > 0) return ok({ alignments, hiddenDates });
  const skylineDeg = edgeDeg(wanted.azimuthDeg);
  const pointDeg = wanted.altitudeDeg;
  if (pointDeg < skylineDeg) return fail({ kind: 'below-skyline', skylineDeg, pointDeg });
  if (hiddenDates > 0) return fail({ kind: 'hidden', hiddenDates });
  if (nearest === null)
    return fail({ kind: 'bad-input', sentences: [`Dates: ${zone} skipped ${question.fromDate}.`] });
  const date = civilDateOf(nearest.instantMs, zone);
  return fail({ kind: 'never-near', nearest: { ...nearest, date } });
}
