import { ERROR_QUANTITIES } from './error-quantities.ts';
import type { MeasuredRow } from './largest-error.ts';

/** The block between `<!-- name -->` and `<!-- /name -->`, markers apart; throws where there is none. */
export const blockOf = (readme: string, name: string): string => {
  const [from, to] = edgesOf(readme, name);
  return readme.slice(from, to);
};

export const withBlock = (readme: string, name: string, block: string): string => {
  const [from, to] = edgesOf(readme, name);
  return `${readme.slice(0, from)}\n${block}\n${readme.slice(to)}`;
};

const edgesOf = (readme: string, name: string): readonly [from: number, to: number] => {
  const [start, end] = [`<!-- ${name} -->`, `<!-- /${name} -->`];
  const from = readme.indexOf(start);
  const to = readme.indexOf(end, from);
  if (from < 0 || to < 0) throw new Error(`README.md: expected ${start} and, after it, ${end}.`);
  return [from + start.length, to];
};

/** In the order of the quantities, and within one by what it was compared with. */
export const errorTable = (rows: readonly MeasuredRow[]): string => {
  const missing = ERROR_QUANTITIES.filter((name) => !rows.some((row) => row.quantity === name));
  if (missing.length > 0) throw new Error(`No test measured: ${missing.join(', ')}.`);
  const sorted = rows.toSorted(
    (one, other) =>
      placeOf(one) - placeOf(other) || one.comparedWith.localeCompare(other.comparedWith, 'en'),
  );
  return [
    '| quantity | method | compared with | largest error found |',
    '| --- | --- | --- | --- |',
    ...sorted.map(
      ({ quantity, method, comparedWith, error }) =>
        `| ${quantity} | ${method} | ${comparedWith} | ${error} |`,
    ),
  ].join('\n');
};

const placeOf = ({ quantity }: MeasuredRow): number => ERROR_QUANTITIES.indexOf(quantity);
