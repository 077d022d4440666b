import { boundsOf, type ElevationArea } from './elevation-area.ts';
import type { SampleLattice } from './geotiff-reference.ts';

/** Columns and rows of an image, the last ones not included; a ring of one sample may lie outside it. */
export type SampleWindow = {
  readonly left: number;
  readonly top: number;
  readonly right: number;
  readonly bottom: number;
  /** Turns of 360° to bring the image's longitudes to those of the place. */
  readonly turns: number;
};

/** 4 bytes each at most. */
const MAX_SAMPLES = 24e6;

/** What of an image lies within reach; nearer only where that would be too many samples. None when nothing does. */
export function sampleWindows(
  lattice: SampleLattice & { readonly columns: number; readonly rows: number },
  area: ElevationArea,
): readonly SampleWindow[] {
  const windows = [-1, 0, 1].flatMap((turns) => windowOf(lattice, area, turns));
  const samples = windows.reduce(
    (sum, { left, right, top, bottom }) => sum + (right - left) * (bottom - top),
    0,
  );
  if (samples <= MAX_SAMPLES) return windows;
  return sampleWindows(lattice, {
    ...area,
    reachM: area.reachM * Math.min(0.95, Math.sqrt(MAX_SAMPLES / samples)),
  });
}

function windowOf(
  lattice: SampleLattice & { readonly columns: number; readonly rows: number },
  area: ElevationArea,
  turns: number,
): readonly SampleWindow[] {
  const { westDeg, eastDeg, northDeg, southDeg } = boundsOf(area);
  const { columns, rows, columnStep, rowStep, isArea } = lattice;
  const west = lattice.west + 360 * turns;
  const ring = isArea ? 1 : 0;
  const left = Math.max(-ring, Math.floor((westDeg - west) / columnStep) - 1);
  const right = Math.min(columns + ring, Math.ceil((eastDeg - west) / columnStep) + 2);
  const top = Math.max(-ring, Math.floor((lattice.north - northDeg) / rowStep) - 1);
  const bottom = Math.min(rows + ring, Math.ceil((lattice.north - southDeg) / rowStep) + 2);
  const isSomething =
    Math.min(right, columns) - Math.max(left, 0) >= 2 &&
    Math.min(bottom, rows) - Math.max(top, 0) >= 2;
  return isSomething ? [{ left, top, right, bottom, turns }] : [];
}

/** Samples outside the image become copies of the outermost ones inside. */
export function copyOutermost(
  values: Int16Array | Float32Array,
  window: SampleWindow,
  image: { readonly columns: number; readonly rows: number },
): void {
  const width = window.right - window.left;
  const height = window.bottom - window.top;
  const copyRow = (to: number, from: number): void => {
    values.copyWithin(to * width, from * width, (from + 1) * width);
  };
  for (let row = 0; row < height; row += 1) {
    const start = row * width;
    if (window.left < 0) values[start] = values[start + 1] ?? 0;
    if (window.right > image.columns) values[start + width - 1] = values[start + width - 2] ?? 0;
  }
  if (window.top < 0) copyRow(0, 1);
  if (window.bottom > image.rows) copyRow(height - 1, height - 2);
}
