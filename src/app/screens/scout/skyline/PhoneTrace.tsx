import { useMemo, useState, type ReactNode } from 'react';

import type { Spot } from '../../../../core/plan/shoot.ts';
import { phoneLineOfSight, type SightLine } from '../../../../core/skyline/phone-line-of-sight.ts';
import { sweptRuns } from '../../../../core/skyline/skyline-sweep.ts';
import type { Skyline } from '../../../../core/skyline/skyline.ts';
import { wrapDeg360 } from '../../../../core/units/angle.ts';
import { bearingText, tenths } from '../../../ui/figure-text.ts';
import { SelectField } from '../../../ui/SelectField.tsx';
import { KeepTrace, RUN_REST, type KeepAnswer } from './KeepTrace.tsx';
import { SetNorth } from './SetNorth.tsx';
import { TracePreview } from './TracePreview.tsx';
import type { OrientationReading } from './use-orientation.ts';
import { usePhoneNorth } from './use-phone-north.ts';
import { useRecording } from './use-recording.ts';

type PhoneTraceProps = {
  readonly spot: Spot;
  readonly onKeep: (keep: KeepAnswer, runs: readonly Skyline[]) => void;
};

const LINES: readonly { readonly value: SightLine; readonly text: string }[] = [
  { value: 'top-edge', text: 'its long edge, held flat like a ruler' },
  { value: 'back-camera', text: 'its back, held up like a camera' },
];

/** The skyline recorded by turning round with the phone held along it. */
export function PhoneTrace({ spot, onKeep }: PhoneTraceProps): ReactNode {
  const recording = useRecording();
  const { state, shown, recorded, isRecording } = recording;
  const [along, setAlong] = useState<SightLine>('top-edge');
  const [northDeg, setNorthDeg] = useState<number | null>(null);
  const north = usePhoneNorth(spot, northDeg, state.kind === 'live' && state.fromNorth);
  const { offsetDeg } = north;
  const runs = useMemo(
    () =>
      offsetDeg === null
        ? []
        : sweptRuns(
            recorded.map((reading) => ({
              atMs: reading.atMs,
              ...sightOf(reading, along, offsetDeg),
            })),
          ),
    [recorded, along, offsetDeg],
  );
  const azimuthNow = (): number | null => {
    const now = recording.latest.current;
    return now === null ? null : sightOf(now, along, 0).azimuthDeg;
  };
  return (
    <>
      <p className="quiet">
        Sight along the phone to the edge between ground and sky, and turn slowly, about 10° a
        second. The readings stay on this page until you keep them.
      </p>
      <SelectField
        label="Sight along"
        field="sight-line"
        value={along}
        options={LINES}
        onChoose={setAlong}
      />
      {state.kind === 'none' ? (
        <p role="alert" data-figure="no-sensor">
          {state.sentence}
        </p>
      ) : null}
      {state.kind === 'live' ? null : (
        <button
          type="button"
          className="first"
          data-start-sensor
          disabled={state.kind === 'waiting'}
          onClick={recording.startSensor}
        >
          {state.kind === 'waiting' ? 'Waiting for the sensor…' : 'Start the sensor'}
        </button>
      )}
      {state.kind === 'live' ? (
        <>
          <p className="figure" data-figure="phone-sight">
            {shown === null ? '…' : sightFigure(sightOf(shown, along, offsetDeg ?? 0))}
          </p>
          <p className="quiet" data-figure="phone-north">
            {north.words}
          </p>
          <SetNorth
            spot={spot}
            azimuthNow={azimuthNow}
            isSet={northDeg !== null}
            onSet={setNorthDeg}
          />
          <p className="choices">
            {isRecording ? (
              <button type="button" className="first" data-stop-recording onClick={recording.stop}>
                Stop: {recording.count} readings
              </button>
            ) : (
              <button
                type="button"
                className="first"
                data-record
                disabled={offsetDeg === null}
                onClick={recording.record}
              >
                Record
              </button>
            )}
          </p>
        </>
      ) : null}
      {!isRecording && runs.length > 0 ? (
        <>
          <TracePreview spot={spot} runs={runs} />
          <KeepTrace
            runs={runs}
            origin="phone, held along the skyline"
            restWords={RUN_REST}
            onKeep={(keep) => onKeep(keep, runs)}
            onDrop={recording.drop}
          />
        </>
      ) : null}
    </>
  );
}

function sightOf(
  { angles }: OrientationReading,
  along: SightLine,
  offsetDeg: number,
): { readonly azimuthDeg: number; readonly altitudeDeg: number } {
  const { azimuthDeg, altitudeDeg } = phoneLineOfSight(angles, along);
  return { azimuthDeg: wrapDeg360(azimuthDeg + offsetDeg), altitudeDeg };
}

const sightFigure = (sight: {
  readonly azimuthDeg: number;
  readonly altitudeDeg: number;
}): string => `${bearingText(sight.azimuthDeg)}, ${tenths(sight.altitudeDeg)}° high`;
