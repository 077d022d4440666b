import { useState, type ReactNode } from 'react';

import type { Head, Reading } from '../../../core/plan/kit.ts';
import { headWithModifier } from '../../../core/plan/modified-head.ts';
import { inOrder } from '../../../core/plan/order-key.ts';
import { readingDoubt } from '../../../core/plan/reading-effect.ts';
import { faceAreaM2, headFromReading, type HeadFigure } from '../../../core/strobe/head.ts';
import { useKit } from '../../state/documents.tsx';
import { metres, signedTenths } from '../../ui/figure-text.ts';
import { MeasureSteps } from './MeasureSteps.tsx';
import { ReadingEffectTable } from './ReadingEffectTable.tsx';

type MeasureMineProps = {
  readonly headId: string;
  readonly head: Head;
  readonly onChange: (readings: Head['readings']) => void;
};

const FIRST_READING: Reading = {
  fNumber: 11,
  iso: 100,
  distanceM: 2,
  ambientFNumber: null,
  powerStops: 0,
  diffuser: true,
  baffle: false,
  grid: false,
};

/** One flash-meter reading at a known distance makes the head's figure the user's own, step by step. */
export function MeasureMine({ headId, head, onChange }: MeasureMineProps): ReactNode {
  const kit = useKit();
  const modifiers = inOrder(kit.modifiers);
  const [modifierId, setModifierId] = useState(modifiers[0]?.[0] ?? '');
  const [draft, setDraft] = useState<Reading | null>(null);
  const modifier = kit.modifiers[modifierId];
  if (modifier === undefined) return <p>Add a modifier first: a reading is made through one.</p>;
  const stored = head.readings[modifierId];
  const reading = draft ?? stored ?? FIRST_READING;
  const figure = headFromReading({ ...reading, faceAreaM2: faceAreaM2(modifier) });
  const { [modifierId]: _, ...others } = head.readings;
  const choose = (id: string): void => {
    setModifierId(id);
    setDraft(null);
  };
  const keep = (readings: Head['readings']): void => {
    onChange(readings);
    setDraft(null);
  };
  return (
    <fieldset className="measure">
      <legend>Measure mine</legend>
      <p className="quiet">
        One metered shot beats any rated figure. {stored ? 'A reading is kept.' : 'No reading yet.'}
      </p>
      <MeasureSteps
        head={head}
        modifierId={modifierId}
        modifier={modifier}
        reading={reading}
        onModifier={choose}
        onChange={(fields) => setDraft({ ...reading, ...fields })}
      />
      {figure.ok ? (
        <Result
          figure={figure.value}
          rated={headWithModifier({
            head: { ...head, readings: others },
            modifier,
            modifierId,
            gel: null,
            light: reading,
          })}
          reading={reading}
        />
      ) : (
        <p className="fault" role="alert">
          {figure.problem.sentence}
        </p>
      )}
      {draft !== null && figure.ok ? (
        <ReadingEffectTable headId={headId} modifierId={modifierId} reading={reading} />
      ) : null}
      <div>
        <button
          type="button"
          className="first"
          data-keep-reading
          disabled={!figure.ok}
          onClick={() => keep({ ...head.readings, [modifierId]: reading })}
        >
          Keep this reading
        </button>{' '}
        {stored === undefined ? null : (
          <button type="button" data-drop-reading onClick={() => keep(others)}>
            Drop the reading
          </button>
        )}
      </div>
    </fieldset>
  );
}

type ResultProps = {
  readonly figure: HeadFigure;
  readonly rated: HeadFigure;
  readonly reading: Reading;
};

function Result({ figure, rated, reading }: ResultProps): ReactNode {
  const againstRatedStops =
    2 * Math.log2(figure.guideNumberM / rated.guideNumberM) + rated.lossStops;
  const doubt = readingDoubt(reading, againstRatedStops);
  return (
    <>
      <p>
        That makes a guide number of{' '}
        <strong data-figure="reading-guide-number">{metres(figure.guideNumberM)}</strong> at full
        power, ISO 100, through this modifier:{' '}
        <span data-figure="reading-against-rated">{signedTenths(againstRatedStops)}</span> stops
        against the {rated.origin === 'watt-seconds' ? 'watt-second guess' : 'rated figure'}.
      </p>
      {doubt === null ? null : (
        <p className="fault" data-figure="reading-doubt">
          {doubt}
        </p>
      )}
    </>
  );
}
