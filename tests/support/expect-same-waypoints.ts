import { expect } from 'vitest';

import type { Waypoint } from '../../src/core/plan/waypoint.ts';

/**
 * The same waypoints after writing and reading: positions to half of 1e-7° (the decimals written,
 * with a rounding of the sum itself), elevations to half a centimetre, bearings to half of 0.001°.
 */
export function expectSameWaypoints(read: readonly Waypoint[], written: readonly Waypoint[]): void {
  expect(read.length).toBe(written.length);
  read.forEach((one, index) => {
    const other = written[index];
    if (other === undefined) throw new Error('expected as many as were written');
    expect(Math.abs(one.latitudeDeg - other.latitudeDeg)).toBeLessThan(5.1e-8);
    expect(turnBetween(one.longitudeDeg, other.longitudeDeg)).toBeLessThan(5.1e-8);
    expect(one.elevationM === null).toBe(other.elevationM === null);
    expect(Math.abs((one.elevationM ?? 0) - (other.elevationM ?? 0))).toBeLessThan(0.0051);
    expect(one.bearingDeg === null).toBe(other.bearingDeg === null);
    expect(turnBetween(one.bearingDeg ?? 0, other.bearingDeg ?? 0)).toBeLessThan(0.00051);
    expect([one.name, one.note, one.takenAtMs]).toEqual([other.name, other.note, other.takenAtMs]);
  });
}

const turnBetween = (firstDeg: number, secondDeg: number): number =>
  Math.abs(((firstDeg - secondDeg + 540) % 360) - 180);
