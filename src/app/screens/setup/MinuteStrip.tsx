import { useMemo, type ReactNode } from 'react';

import type { SetupColumn } from '../../../core/plan/setup-column.ts';
import { VERDICTS } from '../../../core/plan/verdicts.ts';
import type { Spot } from '../../../core/plan/shoot.ts';
import type { SunEvents } from '../../../core/sun-moon/sun-events.ts';
import { clockTime } from '../../../core/units/civil-time.ts';
import { DayStrip, type StripBand } from '../../charts/DayStrip.tsx';
import { useSetupColumn } from '../../state/columns.ts';
import { look } from '../../state/view.ts';
import { isNearBlock, type SetupBlock } from './setup-minute.ts';

type MinuteStripProps = {
  readonly setupId: string;
  readonly spot: Spot;
  readonly minuteMs: number;
  readonly presentMs: number;
  readonly isPresent: boolean;
  readonly events: SunEvents;
  readonly block: SetupBlock;
  readonly range: SetupBlock;
};

const EVENT_NAMES = [
  ['civilDawnMs', 'civil dawn'],
  ['sunriseMs', 'sunrise'],
  ['sunsetMs', 'sunset'],
  ['civilDuskMs', 'civil dusk'],
] as const;

/** The minute of the setup's day, and the way back to its start or to the present. */
export function MinuteStrip(props: MinuteStripProps): ReactNode {
  const { setupId, spot, minuteMs, presentMs, isPresent, events, block, range } = props;
  const column = useSetupColumn(setupId);
  const bands = useMemo(
    () => [...nights(events, range), ...(column === null ? [] : holds(column))],
    [column, events, range],
  );
  const named = useMemo(
    () =>
      EVENT_NAMES.flatMap(([key, label]) => {
        const ms = events[key];
        return ms === null ? [] : [{ ms, label }];
      }),
    [events],
  );
  const near = isNearBlock(presentMs, block);
  return (
    <section className="setup-strip" aria-label="Minute">
      <div className="strip-height">
        <DayStrip
          {...range}
          zone={spot.zone}
          minuteMs={minuteMs}
          onMinute={(ms) => look({ minuteMs: ms })}
          bands={bands}
          events={named}
        />
      </div>
      <p className="quiet">Red edge: the lights hold the sky.</p>
      <div className="strip-buttons">
        {minuteMs === block.startMs ? null : (
          <button
            type="button"
            data-to-start
            onClick={() => look({ minuteMs: near ? block.startMs : null })}
          >
            To {clockTime(block.startMs, spot.zone)}, its start
          </button>
        )}
        {near && !isPresent ? (
          <button type="button" data-follow-clock onClick={() => look({ minuteMs: null })}>
            Follow the clock
          </button>
        ) : null}
      </div>
    </section>
  );
}

const nights = (events: SunEvents, { startMs, endMs }: SetupBlock): readonly StripBand[] => [
  ...(events.sunriseMs === null
    ? []
    : [{ kind: 'night', fromMs: startMs, toMs: events.sunriseMs } as const]),
  ...(events.sunsetMs === null
    ? []
    : [{ kind: 'night', fromMs: events.sunsetMs, toMs: endMs } as const]),
];

const WORKS = VERDICTS.indexOf('works');

/** Runs of the column's steps that work, half a step to either side. */
function holds({ instantMs, verdict }: SetupColumn): readonly StripBand[] {
  const halfStepMs = ((instantMs[1] ?? 0) - (instantMs[0] ?? 0)) / 2;
  const bands: { kind: 'hold'; fromMs: number; toMs: number }[] = [];
  verdict.forEach((each, at) => {
    if (each !== WORKS) return;
    const atMs = instantMs[at] ?? NaN;
    const last = bands.at(-1);
    if (last !== undefined && verdict[at - 1] === WORKS) last.toMs = atMs + halfStepMs;
    else bands.push({ kind: 'hold', fromMs: atMs - halfStepMs, toMs: atMs + halfStepMs });
  });
  return bands;
}
