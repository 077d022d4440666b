import type { AlignmentHold } from '../../../../core/plan/alignment-light.ts';
import type { AlignmentProblem, StandingBody } from '../../../../core/spot/alignment.ts';
import type { SkyBody } from '../../../../core/spot/alignment-question.ts';
import type { PicturePoint } from '../../../../core/sky/framing.ts';
import type { Direction } from '../../../../core/units/direction.ts';
import { clockTime, formatDate } from '../../../../core/units/civil-time.ts';
import { bearingText, inHandText, spreadText, tenths } from '../../../ui/figure-text.ts';
import { brokenText } from '../../../ui/verdict-text.ts';

const LOCALE = 'en-GB';

/** '285° WNW, 4.2° up' */
export function directionText({ azimuthDeg, altitudeDeg }: Direction): string {
  const height =
    altitudeDeg < 0 ? `${tenths(-altitudeDeg)}° below the level` : `${tenths(altitudeDeg)}° up`;
  return `${bearingText(azimuthDeg)}, ${height}`;
}

/** '20 % right of the centre, 10 % above it' */
export function pointText({ xFraction, yFraction }: PicturePoint): string {
  return `${partText(xFraction, 'right of', 'left of')} the centre, ${partText(yFraction, 'above', 'below')} it`;
}

const partText = (fraction: number, positive: string, negative: string): string =>
  `${percent(fraction)} ${fraction < 0 ? negative : positive}`;

const percent = (fraction: number): string => `${Number(Math.abs(100 * fraction).toFixed(1))} %`;

/** '0.12° off the point: 0.2 % of the width left, 0.1 % of the height high' */
export function missText(
  { missDeg, inPicture }: StandingBody & { readonly inPicture: PicturePoint | null },
  wanted: PicturePoint,
): string {
  const off = `${missDeg.toFixed(2)}° off the point`;
  if (inPicture === null) return off;
  const right = inPicture.xFraction - wanted.xFraction;
  const above = inPicture.yFraction - wanted.yFraction;
  return `${off}: ${percent(right)} of the width ${right < 0 ? 'left' : 'right'}, ${percent(above)} of the height ${above < 0 ? 'low' : 'high'}`;
}

/** '19:29 to 19:33', '19:31' when it is one minute */
export function spanText(
  span: { readonly firstMs: number; readonly lastMs: number },
  zone: string,
): string {
  const [first, last] = [clockTime(span.firstMs, zone), clockTime(span.lastMs, zone)];
  return span.firstMs === span.lastMs ? first : `${first} to ${last}`;
}

/** '0.6 in hand ± 0.7', 'short by 1.2, fill runs out first' */
export function holdText({
  verdict,
  inHandStops,
  shortByStops,
  role,
  referenceSpreadStops,
}: AlignmentHold): string {
  if (verdict !== 'works') return brokenText({ verdict, shortByStops, role });
  return Number.isFinite(inHandStops)
    ? `${inHandText(inHandStops)} ${spreadText(referenceSpreadStops)}`
    : 'works: nothing has to be lit';
}

/** Why there is no date. */
export function noDateText(
  problem: AlignmentProblem,
  { body, zone }: { readonly body: SkyBody; readonly zone: string },
): string {
  switch (problem.kind) {
    case 'bad-input':
      return problem.sentences.join(' ');
    case 'below-skyline': {
      const { skylineDeg, pointDeg } = problem;
      const underDeg = skylineDeg - pointDeg;
      return skylineDeg > 0
        ? `The point is below the skyline: ${tenths(underDeg)}° of ground stand there.`
        : `The point is below the horizon, by ${tenths(underDeg)}°.`;
    }
    case 'hidden':
      return `The ${body} passes there on ${problem.hiddenDates === 1 ? 'one date' : `${problem.hiddenDates} dates`}, each time behind the skyline.`;
    case 'never-near': {
      const { missDeg, altitudeDeg, date, instantMs } = problem.nearest;
      const under =
        altitudeDeg < 0 ? ` It is ${tenths(-altitudeDeg)}° below the horizon then.` : '';
      return `The ${body} never comes nearer than ${tenths(missDeg)}°, on ${formatDate(date, LOCALE)} at ${clockTime(instantMs, zone)}.${under}`;
    }
  }
}

/** 'the whole disc over the skyline', '0.4 of the disc over the skyline' */
export const discText = (share: number): string =>
  share >= 0.995
    ? 'the whole disc over the skyline'
    : `${Math.max(0.1, share).toFixed(1)} of the disc over the skyline`;

/** '12 times on 8 dates.', with the dates that the skyline takes. */
export function countText(
  alignments: readonly { readonly date: string }[],
  hiddenDates: number,
): string {
  const dates = new Set(alignments.map(({ date }) => date)).size;
  const times = alignments.length === dates ? '' : `${alignments.length} times on `;
  const hidden =
    hiddenDates === 0
      ? ''
      : ` On ${datesText(hiddenDates)} more it passes there behind the skyline.`;
  return `${times}${datesText(dates)}.${hidden}`;
}

const datesText = (dates: number): string => (dates === 1 ? '1 date' : `${dates} dates`);
