import './tone-scale.css';
import type { ReactNode } from 'react';

import { labelPlaces } from './label-places.ts';
import { stopTone } from './stop-tone.ts';

export type ToneLabel = {
  readonly id: string;
  readonly text: string;
  /** The stops as they are to be read. */
  readonly figure: string;
  /** From a grey card under the key; infinite for what clips at any setting. */
  readonly stops: number;
  readonly of: 'flash' | 'sky' | 'ambient';
  readonly strong: boolean;
};

type ToneScaleProps = {
  readonly labels: readonly ToneLabel[];
  /** Where the frame clips. */
  readonly clipStops: number;
};

/** All lengths in rem, so that the scale grows with the reader's type. */
const STOP_REM = 3.1;
const LABEL_GAP_REM = 1.3;
const LEADER_REM = 3;
const TOP_STOPS = 3;
const LEAST_BOTTOM_STOPS = -4;
const MOST_BOTTOM_STOPS = -8;

/** Where sky, faces and ground fall, in true tones. */
export function ToneScale({ labels, clipStops }: ToneScaleProps): ReactNode {
  const lowest = Math.min(...labels.map(({ stops }) => Math.floor(stops)), LEAST_BOTTOM_STOPS);
  const bottomStops = Math.max(MOST_BOTTOM_STOPS, lowest);
  const blocks = Array.from(
    { length: TOP_STOPS - bottomStops + 1 },
    (_, place) => TOP_STOPS - place,
  );
  const heightRem = blocks.length * STOP_REM;
  const yOf = (stops: number): number =>
    (TOP_STOPS + 0.5 - Math.min(TOP_STOPS, Math.max(bottomStops, stops))) * STOP_REM;
  const sorted = labels.toSorted((first, second) => second.stops - first.stops);
  const places = labelPlaces(
    sorted.map(({ stops }) => yOf(stops)),
    { gap: LABEL_GAP_REM, from: LABEL_GAP_REM / 2, to: heightRem - LABEL_GAP_REM / 2 },
  );
  return (
    <div className="tone-scale" style={{ height: `${heightRem}rem` }}>
      <ol className="tones">
        {blocks.map((stops) => (
          <li key={stops} style={{ height: `${STOP_REM}rem` }}>
            <span>{stops === 0 ? 'card' : stops > 0 ? `+${stops}` : `−${-stops}`}</span>
            <i style={{ background: stopTone(stops) }} data-tone={stops} />
          </li>
        ))}
      </ol>
      <i className="clip" style={{ top: `${yOf(clipStops)}rem` }} title="The frame clips here" />
      <svg
        className="leaders"
        viewBox={`0 0 ${LEADER_REM} ${heightRem}`}
        style={{ width: `${LEADER_REM}rem`, height: `${heightRem}rem` }}
        aria-hidden="true"
      >
        {sorted.map(({ id, of, stops }, at) => (
          <polyline
            key={id}
            className={of}
            points={`0,${yOf(stops)} ${0.4 * LEADER_REM},${yOf(stops)} ${0.8 * LEADER_REM},${places[at] ?? 0} ${LEADER_REM},${places[at] ?? 0}`}
          />
        ))}
      </svg>
      <ul className="labels">
        {sorted.map((label, at) => (
          <li
            key={label.id}
            className={label.of}
            style={{ top: `${places[at] ?? 0}rem` }}
            data-mark={label.id}
          >
            {label.strong ? <strong>{label.text}</strong> : label.text}{' '}
            <span data-figure={`tone-${label.id}`}>{label.figure}</span>
          </li>
        ))}
      </ul>
    </div>
  );
}
