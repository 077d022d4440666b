import type { ReactNode } from 'react';

import { inOrder } from '../../../core/plan/order-key.ts';
import { sunEvents } from '../../../core/sun-moon/sun-events.ts';
import { clockTime, utcOffsetText } from '../../../core/units/civil-time.ts';
import { useShoot } from '../../state/documents.tsx';

/** The sun's times at the first spot, level horizon. */
export function LightTimes(): ReactNode {
  const shoot = useShoot();
  const first = inOrder(shoot.spots)[0]?.[1];
  if (first === undefined) return <p>No spot yet.</p>;
  const events = sunEvents({ date: shoot.date, zone: first.zone, place: first });
  const at = (ms: number | null): string => (ms === null ? 'none' : clockTime(ms, first.zone));
  return (
    <p data-figure="light-times">
      <strong>Light</strong> at {first.name}: first light {at(events.civilDawnMs)} · sunrise{' '}
      {at(events.sunriseMs)} · solar noon {at(events.solarNoonMs)} · sunset {at(events.sunsetMs)} ·
      last light {at(events.civilDuskMs)} (local,{' '}
      {utcOffsetText(events.solarNoonMs ?? 0, first.zone)}; level horizon, civil twilight)
    </p>
  );
}
