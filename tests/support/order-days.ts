import type { OrderQuestion, OrderSetup } from '../../src/core/plan/order-day.ts';

export const DAY_START_MS = Date.UTC(2027, 4, 14, 4);
export const minMs = (minutes: number): number => DAY_START_MS + 60_000 * minutes;

type Draw = () => number;

const between = (draw: Draw, least: number, most: number): number =>
  least + Math.floor(draw() * (most - least + 1));

/** Drives between spots on a plane, so that no way round is shorter. */
export function drivesOnAPlane(
  spots: readonly string[],
  sideMin: number,
  draw: Draw,
): Record<string, Record<string, number>> {
  const places = spots.map(() => ({ x: sideMin * draw(), y: sideMin * draw() }));
  return Object.fromEntries(
    spots.map((from, at) => [
      from,
      Object.fromEntries(
        spots.map((to, other) => {
          const [one, two] = [places[at], places[other]];
          const apart = one && two ? Math.hypot(one.x - two.x, one.y - two.y) : 0;
          return [to, Math.ceil(apart)];
        }),
      ),
    ]),
  );
}

/** A worth that rises to 1 at a slot and falls off to both sides, nothing outside its window. */
export const peakedWorth = (shape: {
  readonly slots: number;
  readonly peak: number;
  readonly halfWidth: number;
  readonly floor: number;
}): readonly number[] =>
  Array.from({ length: shape.slots }, (_, slot) => {
    const off = Math.abs(slot - shape.peak) / shape.halfWidth;
    return off > 1 ? -Infinity : shape.floor + (1 - shape.floor) * (1 - off);
  });

/** A day with windows wide and narrow, more in it than can be done. */
export function crowdedDay(
  size: {
    readonly setups: number;
    readonly spots: number;
    readonly hours: number;
    readonly longestShootMin: number;
  },
  draw: Draw,
): OrderQuestion {
  const longestMin = size.longestShootMin;
  const slots = 12 * size.hours;
  const spots = Array.from({ length: size.spots }, (_, at) => `spot ${at}`);
  const setups = Array.from({ length: size.setups }, (_, at): OrderSetup => {
    const peak = between(draw, 0, slots - 1);
    return {
      id: `setup ${at}`,
      spotId: spots[between(draw, 0, spots.length - 1)] ?? 'spot 0',
      buildMin: between(draw, 0, longestMin / 2),
      shootMin: between(draw, 5, longestMin),
      strikeMin: between(draw, 0, longestMin / 3),
      weight: between(draw, 1, 10),
      worth: peakedWorth({
        slots,
        peak,
        halfWidth: between(draw, 3, slots / 2),
        floor: draw() < 0.3 ? 1 : 0.2,
      }),
    };
  });
  return {
    startMs: DAY_START_MS,
    endMs: minMs(60 * size.hours),
    setups,
    travelMin: drivesOnAPlane(spots, longestMin, draw),
  };
}

/**
 * A day built round an order that is known to be the best: every setup stands in it at a start
 * where it is worth the most it can be, and nothing can be worth more than all of that.
 */
export function plantedDay(
  size: { readonly setups: number; readonly spots: number; readonly halfWidth: number },
  draw: Draw,
): { readonly question: OrderQuestion; readonly worth: number } {
  const spots = Array.from({ length: size.spots }, (_, at) => `spot ${at}`);
  const travelMin = drivesOnAPlane(spots, 30, draw);
  const bare = Array.from({ length: size.setups }, (_, at) => ({
    id: `setup ${at}`,
    spotId: spots[between(draw, 0, spots.length - 1)] ?? 'spot 0',
    buildMin: between(draw, 3, 10),
    shootMin: between(draw, 5, 20),
    strikeMin: between(draw, 2, 8),
    weight: between(draw, 1, 9),
  }));
  const starts: number[] = [];
  let freeMin = 0;
  for (const [at, setup] of bare.entries()) {
    const before = bare[at - 1];
    const drive = before === undefined ? 0 : (travelMin[before.spotId]?.[setup.spotId] ?? 0);
    const start = Math.ceil((freeMin + drive + setup.buildMin) / 5);
    starts.push(start);
    freeMin = 5 * start + setup.shootMin + setup.strikeMin;
  }
  const slots = Math.ceil(freeMin / 5) + 1;
  const setups = bare.map((setup, at): OrderSetup => ({
    ...setup,
    worth: peakedWorth({
      slots,
      peak: starts[at] ?? 0,
      halfWidth: 1 + Math.floor(draw() * size.halfWidth),
      floor: draw(),
    }),
  }));
  return {
    question: {
      startMs: DAY_START_MS,
      endMs: minMs(freeMin),
      setups: setups.toSorted(() => draw() - 0.5),
      travelMin,
    },
    worth: setups.reduce((sum, { weight }) => sum + weight, 0),
  };
}
