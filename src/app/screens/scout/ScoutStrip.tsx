import { useMemo, type ReactNode } from 'react';

import type { HoldDay } from '../../../core/plan/hold-day.ts';
import { DayStrip, type StripBand } from '../../charts/DayStrip.tsx';
import { look } from '../../state/view.ts';
import { stripRange } from './scout-minute.ts';

import type { Scouted } from './use-scouted.ts';

type ScoutStripProps = {
  readonly scouted: Scouted;
  readonly hold: HoldDay | null;
  readonly minuteMs: number;
};

/** The day of the spot: night, the sun's events, and when its lights hold the sky. */
export function ScoutStrip({ scouted, hold, minuteMs }: ScoutStripProps): ReactNode {
  const { sun, spot } = scouted;
  const { events, day } = sun;
  const range = stripRange(events, day, minuteMs);
  const marked = useMemo(
    () =>
      [
        { ms: events.sunriseMs, label: 'sunrise' },
        { ms: events.solarNoonMs, label: `noon ${sun.noonAltitudeDeg.toFixed(0)}°` },
        { ms: events.sunsetMs, label: 'sunset' },
        { ms: events.civilDuskMs, label: 'civil dusk' },
      ].flatMap(({ ms, label }) => (ms === null ? [] : [{ ms, label }])),
    [events, sun.noonAltitudeDeg],
  );
  const bands: readonly StripBand[] = [
    ...nights(range, events),
    ...(hold?.windows ?? []).map((span) => ({ ...span, kind: 'hold' as const })),
  ];
  return (
    <>
      <DayStrip
        {...range}
        zone={spot.zone}
        minuteMs={minuteMs}
        onMinute={(ms) => look({ minuteMs: ms })}
        bands={bands}
        events={marked}
      />
      {hold !== null && hold.windows.length > 0 ? (
        <p className="strip-legend">lights hold the sky</p>
      ) : null}
    </>
  );
}

/** Sun down, at both ends of the strip; all of it where it never rises. */
function nights(
  { startMs, endMs }: { readonly startMs: number; readonly endMs: number },
  events: Scouted['sun']['events'],
): readonly StripBand[] {
  const { sunriseMs, sunsetMs } = events;
  return [
    ...(sunriseMs === null ? [] : [{ fromMs: startMs, toMs: sunriseMs, kind: 'night' as const }]),
    ...(sunsetMs === null ? [] : [{ fromMs: sunsetMs, toMs: endMs, kind: 'night' as const }]),
  ];
}
