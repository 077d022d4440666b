import { useState, type ReactNode } from 'react';

import {
  clearTrace,
  tracePoints,
  traceRuns,
  type NewTrace,
} from '../../../../core/plan/skyline-edits.ts';
import type { Spot } from '../../../../core/plan/shoot.ts';
import type { Skyline } from '../../../../core/skyline/skyline.ts';
import { civilDateOf } from '../../../../core/units/civil-time.ts';
import { useEditShoot } from '../../../state/documents.tsx';
import { useServices } from '../../../state/services.ts';
import { say } from '../../../state/view.ts';
import type { KeepAnswer } from './KeepTrace.tsx';
import { PasteTrace } from './PasteTrace.tsx';
import { PhoneTrace } from './PhoneTrace.tsx';
import { PhotoTrace } from './PhotoTrace.tsx';
import { traceLine } from './source-lines.ts';
import { TracePoints } from './TracePoints.tsx';

const WAYS = [
  { way: 'points', text: 'Point by point' },
  { way: 'paste', text: 'Paste a list' },
  { way: 'phone', text: 'Hold the phone along it' },
  { way: 'photo', text: 'Trace it on a photo' },
] as const;
type EntryWay = (typeof WAYS)[number]['way'];

type TracePartProps = { readonly spotId: string; readonly spot: Spot; readonly share: number };

/** The skyline as seen on site, and four ways of noting it. */
export function TracePart({ spotId, spot, share }: TracePartProps): ReactNode {
  const edit = useEditShoot();
  const { newId, nowMs } = useServices();
  const [by, setBy] = useState<EntryWay>('points');
  const label = `trace of ${spot.name}`;
  const dated = civilDateOf(nowMs(), spot.zone);
  const stamp = (keep: KeepAnswer): Omit<NewTrace, 'runs'> => ({ ...keep, idStem: newId(), dated });
  const keepRuns = (keep: KeepAnswer, runs: readonly Skyline[]): void => {
    edit(label, traceRuns(spotId, { ...stamp(keep), runs }));
    kept();
  };
  const kept = (): void => {
    setBy('points');
    say(`The trace of ${spot.name} is kept. Undo takes it back`);
  };
  return (
    <article>
      <h3>Trace</h3>
      <p data-figure="source-trace">{traceLine(spot, share)}</p>
      <p className="choices">
        {WAYS.map(({ way, text }) => (
          <button
            key={way}
            type="button"
            aria-pressed={by === way}
            data-trace-by={way}
            onClick={() => setBy(way)}
          >
            {text}
          </button>
        ))}
      </p>
      {by === 'points' ? <TracePoints spotId={spotId} spot={spot} /> : null}
      {by === 'paste' ? (
        <PasteTrace
          onKeep={(keep, points) => {
            edit(label, tracePoints(spotId, { ...stamp(keep), points }));
            kept();
          }}
        />
      ) : null}
      {by === 'phone' ? <PhoneTrace spot={spot} onKeep={keepRuns} /> : null}
      {by === 'photo' ? <PhotoTrace spot={spot} onKeep={keepRuns} /> : null}
      {Object.keys(spot.skyline).length === 0 ? null : (
        <button
          type="button"
          data-clear-trace
          onClick={() => {
            edit(label, clearTrace(spotId));
            say(`The trace of ${spot.name} is taken away. Undo brings it back`);
          }}
        >
          Remove the trace
        </button>
      )}
    </article>
  );
}
