import type { Spot } from '../../../core/plan/shoot.ts';
import { skylineOf } from '../../../core/plan/setup-light.ts';
import { projectedFraming } from '../../../core/plan/picture-geometry.ts';
import type { GeoPoint } from '../../../core/place/geo-point.ts';
import { sunWindows, type SunWindows } from '../../../core/spot/sun-windows.ts';
import { sunEvents, type SunEvents } from '../../../core/sun-moon/sun-events.ts';
import { sunPosition } from '../../../core/sun-moon/sun-position.ts';
import { dayBoundsMs, type DayBounds } from '../../../core/units/civil-time.ts';

/** The sun over a spot on a date. */
export type SunDay = {
  readonly day: DayBounds;
  readonly events: SunEvents;
  readonly windows: SunWindows;
  /** True altitude of the sun's centre in the middle of its day; where it neither rises nor sets, this says which. */
  readonly noonAltitudeDeg: number;
};

export function sunDay(spot: Spot, date: string): SunDay {
  const place = placeOf(spot);
  const day = dayBoundsMs(date, spot.zone);
  const events = sunEvents({ date, zone: spot.zone, place });
  const noonMs = events.solarNoonMs ?? (day.startMs + day.endMs) / 2;
  return {
    day,
    events,
    noonAltitudeDeg: sunPosition(noonMs, place).trueAltitudeDeg,
    windows: sunWindows({
      fromMs: day.startMs,
      toMs: day.endMs,
      place,
      framing: projectedFraming(spot.framing),
      skyline: skylineOf(spot),
    }),
  };
}

export const placeOf = (spot: Spot): Required<GeoPoint> => ({
  latitudeDeg: spot.latitudeDeg,
  longitudeDeg: spot.longitudeDeg,
  elevationM: spot.elevationM,
});
