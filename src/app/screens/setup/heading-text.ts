import type { SetupView } from '../../../core/plan/setup-view.ts';
import {
  HOLD_REFERENCES,
  type HoldReference,
  type Setup,
} from '../../../core/plan/setup-schema.ts';
import { type Spot } from '../../../core/plan/shoot.ts';
import { type ShootFraming } from '../../../core/plan/spot-schema.ts';
import { clockTime } from '../../../core/units/civil-time.ts';
import { tenths } from '../../ui/figure-text.ts';
import { HOLD_WORDS } from '../../ui/hold-words.ts';

const MS_PER_MIN = 60_000;

/** 'Pier head · faces 300°, 35 mm, tilt +6° · 20:00 to 20:40' */
export function headingText(of: {
  readonly spot: Pick<Spot, 'name' | 'zone'>;
  readonly setup: Pick<Setup, 'startClock' | 'durationMin'>;
  readonly framing: ShootFraming;
  readonly startMs: number | null;
}): string {
  const { spot, setup, framing, startMs } = of;
  const end =
    startMs === null
      ? `${setup.durationMin} min`
      : clockTime(startMs + setup.durationMin * MS_PER_MIN, spot.zone);
  return [
    spot.name,
    `faces ${Math.round(framing.bearingDeg) % 360}°, ${round(framing.focalLengthMm)} mm, tilt ${signed(framing.tiltDeg)}°`,
    startMs === null
      ? `${setup.startClock}, a time that clocks skip on this date`
      : `${setup.startClock} to ${end}`,
  ].join(' · ');
}

const round = (value: number): string => String(Math.round(value * 10) / 10);
const signed = (value: number): string =>
  value > 0 ? `+${round(value)}` : round(value).replace('-', '−');

/** 'held 2.0 under the patch = 1.1 under the frame = 5.8 under incident' */
export function holdText({ setup, hold }: Pick<SetupView, 'setup' | 'hold'>): string {
  const others = HOLD_REFERENCES.filter((under) => under !== setup.holdUnder);
  const each = (under: HoldReference): string =>
    Number.isFinite(hold[under])
      ? `${tenths(Math.abs(hold[under]))} ${hold[under] < -0.05 ? 'over' : 'under'} ${HOLD_WORDS[under].brief}`
      : `no light to count ${HOLD_WORDS[under].brief} from`;
  return `held ${[setup.holdUnder, ...others].map(each).join(' = ')}`;
}
