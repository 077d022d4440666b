import type { Spot } from '../../../../core/plan/shoot.ts';
import { LOWEST_SHADOW_SUN_DEG, type ShadowSun } from '../../../../core/skyline/shadow.ts';
import { clockTime } from '../../../../core/units/civil-time.ts';

/** What the map's shadows are at a minute of a spot, or why there are none. */
export function shadowNote(spot: Spot | null, sun: ShadowSun | null, minuteMs: number): string {
  if (spot === null || sun === null) return 'No shadows: without a spot there is no clock';
  const at = clockTime(minuteMs, spot.zone);
  const { apparentAltitudeDeg: altitudeDeg } = sun;
  if (!(altitudeDeg > 0)) return `No shadows at ${at}: the sun is down at ${spot.name}`;
  const height = altitudeDeg < 10 ? altitudeDeg.toFixed(1) : altitudeDeg.toFixed(0);
  const cut =
    altitudeDeg < LOWEST_SHADOW_SUN_DEG
      ? `; drawn no longer than at ${LOWEST_SHADOW_SUN_DEG}°, where they are 57 times the height`
      : '';
  return `Shadows at ${at} on level ground, sun at ${height}°${cut}. Slopes are not in them`;
}
