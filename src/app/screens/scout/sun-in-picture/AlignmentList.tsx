import { useState, type ReactNode } from 'react';

import type { LitAlignment } from '../../../../core/plan/lit-alignments.ts';
import type { PicturePoint } from '../../../../core/sky/framing.ts';
import { clockTime, formatDate } from '../../../../core/units/civil-time.ts';
import { evText, spreadText } from '../../../ui/figure-text.ts';
import { discText, holdText, missText, spanText } from './alignment-text.ts';

type AlignmentListProps = {
  readonly alignments: readonly LitAlignment[];
  readonly wanted: PicturePoint;
  readonly zone: string;
  readonly onUse: (alignment: LitAlignment) => void;
};

const SHOWN_AT_FIRST = 12;

/** The dates with their minutes, how near it comes and what the light is then. */
export function AlignmentList({ alignments, wanted, zone, onUse }: AlignmentListProps): ReactNode {
  const [all, setAll] = useState(false);
  const shown = all ? alignments : alignments.slice(0, SHOWN_AT_FIRST);
  return (
    <>
      <ol className="alignments" data-figure="alignments">
        {shown.map((alignment) => (
          <li key={alignment.firstMs} data-date={alignment.date}>
            <div>
              <h3>
                {formatDate(alignment.date, 'en-GB')}{' '}
                <b data-figure="alignment-minute">{clockTime(alignment.best.instantMs, zone)}</b>
              </h3>
              <p className="quiet">
                {spanText(alignment, zone)}; {missText(alignment.best, wanted)};{' '}
                {discText(alignment.best.discShare)}
                {alignment.illuminatedFraction === null
                  ? ''
                  : `; moon ${(100 * alignment.illuminatedFraction).toFixed(0)} % lit`}
              </p>
              <Light alignment={alignment} />
            </div>
            <button
              type="button"
              data-use-date
              aria-label={`Use ${formatDate(alignment.date, 'en-GB')}`}
              onClick={() => onUse(alignment)}
            >
              Use this date
            </button>
          </li>
        ))}
      </ol>
      {shown.length < alignments.length ? (
        <button type="button" data-all-dates onClick={() => setAll(true)}>
          Show all {alignments.length}
        </button>
      ) : null}
    </>
  );
}

function Light({ alignment }: { readonly alignment: LitAlignment }): ReactNode {
  const { skyEv, skySpreadStops, sunInFrame, hold } = alignment.light;
  if (skyEv === null) return <p data-figure="alignment-light">no sky in this frame</p>;
  return (
    <p>
      <span data-figure="alignment-light">
        sky in frame {evText(skyEv)} {spreadText(skySpreadStops)}
      </span>
      {hold === null ? null : (
        <>
          {', '}
          <b data-figure="alignment-hold">{holdText(hold)}</b>
        </>
      )}
      {sunInFrame ? <span className="quiet"> The sun itself clips at any hold.</span> : null}
    </p>
  );
}
