import { skylineOf } from '../../../core/plan/setup-light.ts';
import type { Shoot, Spot } from '../../../core/plan/shoot.ts';
import { skyRingReader } from '../../../core/spot/sky-ring.ts';
import { civilDateOf, dayOfYear } from '../../../core/units/civil-time.ts';
import { placeOf } from './sun-day.ts';

export type EvRange = { readonly minEv: number; readonly maxEv: number };

type Reader = (minuteMs: number) => readonly number[];

/** Gives the ring of a spot at a minute; the last one of each spot is kept, as the same array. */
export function ringKeeper(): (
  spot: Spot,
  condition: Shoot['condition'],
  minuteMs: number,
) => readonly number[] {
  let readers = new Map<string, Reader>();
  return (spot, condition, minuteMs) => {
    const key = JSON.stringify([placeOf(spot), skylineOf(spot), condition, spot.zone]);
    if (readers.size > MOST_KEPT && !readers.has(key)) readers = new Map();
    const reader = readers.get(key) ?? lastKept(ringReader(spot, condition));
    readers.set(key, reader);
    return reader(minuteMs);
  };
}

const MOST_KEPT = 1000;

function ringReader(spot: Spot, condition: Shoot['condition']): Reader {
  const read = skyRingReader({ place: placeOf(spot), skyline: skylineOf(spot), condition });
  return (instantMs) =>
    Array.from(read({ instantMs, dayOfYear: dayOfYear(civilDateOf(instantMs, spot.zone)) }));
}

function lastKept(read: Reader): Reader {
  let last: { readonly minuteMs: number; readonly ring: readonly number[] } | null = null;
  return (minuteMs) => {
    if (last?.minuteMs !== minuteMs) last = { minuteMs, ring: read(minuteMs) };
    return last.ring;
  };
}

const LEAST_WIDTH_EV = 3;

/** Whole EV round every ring, at least three wide, so that a flat sky is not drawn as a steep one. */
export function ringRange(rings: readonly (readonly number[])[]): EvRange {
  let least = Infinity;
  let most = -Infinity;
  for (const ring of rings)
    for (const ev of ring) {
      if (ev < least) least = ev;
      if (ev > most) most = ev;
    }
  if (!Number.isFinite(least) || !Number.isFinite(most)) return { minEv: 8, maxEv: 14 };
  const minEv = Math.floor(least);
  return { minEv, maxEv: Math.max(Math.ceil(most), minEv + LEAST_WIDTH_EV) };
}
