import { useMemo, type ReactNode } from 'react';

import { utcOffsetText } from '../../../core/units/civil-time.ts';
import { spreadLabels } from '../../charts/spread-labels.ts';
import { fullHours, shareOf } from '../../charts/strip-time.ts';
import { CursorHandle } from './CursorHandle.tsx';
import type { DayCursor } from './day-cursor.ts';
import { sunMarks } from './sun-marks.ts';
import type { Day } from './use-day.ts';
import { useShoot } from '../../state/documents.tsx';

/** One line of small text over the lowest plot there is. */
const LABEL_GAP_SHARE = 0.028;

const percent = (share: number): string => `${100 * share}%`;

/** Clock hours and the sun's events of the selected spot. */
export function Gutter({
  day,
  cursor,
}: {
  readonly day: Day;
  readonly cursor: DayCursor;
}): ReactNode {
  const { date } = useShoot();
  const { frame, zonesDiffer, chosenMs } = day;
  const { spot } = day.selected;
  const hours = useMemo(() => fullHours(frame, spot.zone, 1), [frame, spot.zone]);
  const marks = useMemo(() => {
    const inside = sunMarks(spot, date, spot.zone).filter(
      ({ ms }) => ms >= frame.startMs && ms <= frame.endMs,
    );
    return spreadLabels(
      inside.map((mark) => ({ ...mark, share: shareOf(mark.ms, frame) })),
      LABEL_GAP_SHARE,
    );
  }, [spot, date, frame]);
  return (
    <div className="gutter">
      <p className="gutter-head quiet">
        {zonesDiffer
          ? `clocks of ${spot.name}, ${utcOffsetText(chosenMs, spot.zone)}`
          : 'local time'}
      </p>
      <div className="gutter-time">
        {hours.map(({ ms, text }) => (
          <span key={ms} className="hour" style={{ top: percent(shareOf(ms, frame)) }}>
            {text}
          </span>
        ))}
        <svg
          className="leaders"
          viewBox="0 0 10 1000"
          preserveAspectRatio="none"
          aria-hidden="true"
        >
          {marks.map(({ ms, share, shownShare }) => (
            <path key={ms} d={`M0 ${1000 * share}L10 ${1000 * shownShare}`} />
          ))}
        </svg>
        <ol aria-label={`The sun at ${spot.name}`}>
          {marks.map(({ ms, text, short, shownShare }) => (
            <li key={ms} className="sun-mark" style={{ top: percent(shownShare) }}>
              <span className="long">{text}</span>
              <span className="short" aria-hidden="true">
                {short}
              </span>
            </li>
          ))}
        </ol>
        <CursorHandle cursor={cursor} frame={frame} zone={spot.zone} />
      </div>
    </div>
  );
}
