import { varint } from './map-archive.ts';

export type TileFeature = {
  readonly kind: 'line' | 'polygon';
  /** In 0 to 4096 from the tile's upper left corner. */
  readonly points: readonly (readonly [number, number])[];
  readonly tags: Readonly<Record<string, string>>;
};

/** A vector tile by the open vector tile specification, version 2.1. */
export const vectorTile = (
  layers: Readonly<Record<string, readonly TileFeature[]>>,
): Uint8Array<ArrayBuffer> =>
  new Uint8Array(
    Object.entries(layers).flatMap(([name, features]) => field(3, layer(name, features))),
  );

const layer = (name: string, features: readonly TileFeature[]): number[] => {
  const keys = [...new Set(features.flatMap(({ tags }) => Object.keys(tags)))];
  const values = [...new Set(features.flatMap(({ tags }) => Object.values(tags)))];
  return [
    ...number(15, 2),
    ...field(1, text(name)),
    ...features.flatMap(({ kind, points, tags }) =>
      field(2, [
        ...field(
          2,
          Object.entries(tags).flatMap(([key, value]) => [
            ...varint(keys.indexOf(key)),
            ...varint(values.indexOf(value)),
          ]),
        ),
        ...number(3, kind === 'line' ? 2 : 3),
        ...field(4, geometry(points, kind === 'polygon')),
      ]),
    ),
    ...keys.flatMap((key) => field(3, text(key))),
    ...values.flatMap((value) => field(4, field(1, text(value)))),
    ...number(5, 4096),
  ];
};

/** Move to the first point, line to the others, close a polygon; steps in zigzag. */
const geometry = (points: TileFeature['points'], closed: boolean): number[] => {
  const steps = points.map(([x, y], index) => {
    const [fromX, fromY] = points[index - 1] ?? [0, 0];
    return [...varint(zigzag(x - fromX)), ...varint(zigzag(y - fromY))];
  });
  return [
    ...varint(1 | (1 << 3)),
    ...(steps[0] ?? []),
    ...varint(2 | ((points.length - 1) << 3)),
    ...steps.slice(1).flat(),
    ...(closed ? varint(7 | (1 << 3)) : []),
  ];
};

const zigzag = (value: number): number => (value < 0 ? -2 * value - 1 : 2 * value);

const text = (words: string): number[] => [...new TextEncoder().encode(words)];

const number = (key: number, value: number): number[] => [...varint(key << 3), ...varint(value)];

const field = (key: number, bytes: readonly number[]): number[] => [
  ...varint((key << 3) | 2),
  ...varint(bytes.length),
  ...bytes,
];
