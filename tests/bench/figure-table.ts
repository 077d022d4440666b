import type { Figure } from './bench.ts';

/** Figure, measured, target, measured ÷ target, and whether it is met; one line each. */
export const figureTable = (figures: readonly Figure[]): readonly string[] => {
  const rows = [
    ['', 'measured', 'target', 'ratio', ''],
    ...figures.map(({ figure, value, unit, target, ok }) => [
      figure,
      `${threeDigits(value)} ${unit}`,
      `${threeDigits(target)} ${unit}`,
      target === 0 ? '–' : (value / target).toFixed(2),
      ok ? 'met' : 'MISSED',
    ]),
  ];
  const widths = (rows[0] ?? []).map((_, column) =>
    Math.max(...rows.map((row) => row[column]?.length ?? 0)),
  );
  return rows.map((row) =>
    row
      .map((cell, column) =>
        column === 0 || column === 4
          ? cell.padEnd(widths[column] ?? 0)
          : cell.padStart(widths[column] ?? 0),
      )
      .join('  ')
      .trimEnd(),
  );
};

const threeDigits = (value: number): string =>
  Math.abs(value) >= 100 ? value.toFixed(0) : String(Number(value.toPrecision(3)));
