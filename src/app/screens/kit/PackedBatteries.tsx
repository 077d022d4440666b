import type { ReactNode } from 'react';

import { MOST_SPARES, type AirClass } from '../../../core/plan/air-travel.ts';
import type { PackedBattery } from '../../../core/plan/packing-list.ts';
import { batteryCountText, headChargesText } from '../../ui/battery-text.ts';

const AIR_TEXTS: Readonly<Record<AirClass, string>> = {
  cabin: 'flies in the cabin',
  'ask-carrier': `only with the carrier’s approval, at most ${MOST_SPARES} spares`,
  'not-in-cabin': 'does not fly with passengers: ask for freight, or hire there',
};

/** Batteries for the whole day, and what of them may fly. */
export function PackedBatteries(props: {
  readonly batteries: readonly PackedBattery[];
}): ReactNode {
  const { batteries } = props;
  if (batteries.length === 0) return null;
  return (
    <section aria-label="Batteries">
      <h2>Batteries for the whole day</h2>
      <ul className="packed-batteries">
        {batteries.map((need) => (
          <li key={need.batteryId ?? need.heads[0]?.headId}>
            <strong>{need.battery?.name ?? 'Battery of its own'}</strong>{' '}
            <span data-figure={`day-batteries-${need.batteryId ?? need.heads[0]?.headId ?? ''}`}>
              {need.heads.map(headChargesText).join('; ')}:{' '}
              <span className={need.shortBy > 0 ? 'fault' : undefined}>
                {batteryCountText(need)}
              </span>
              .
            </span>
            {need.battery === null || need.airClass === null ? null : (
              <span className="quiet">
                {' '}
                {need.battery.wattHours} Wh each: {AIR_TEXTS[need.airClass]}
                {need.sparesTooMany === 0
                  ? ''
                  : `; ${need.sparesTooMany} ${need.sparesTooMany === 1 ? 'spare' : 'spares'} too many for one passenger`}
                .
              </span>
            )}
          </li>
        ))}
      </ul>
      <p className="quiet">
        All frames of all setups, the cold of each taken off, nothing charged in between; the far
        end is what nine days of ten stay under. By air: up to 100 Wh in the cabin, 100 to 160 Wh
        with the carrier’s approval, above that not; spares never in the hold, terminals covered.
        Rules differ and change: ask your carrier.
      </p>
    </section>
  );
}
