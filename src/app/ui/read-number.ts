import { fail, ok, type Result } from '../../core/units/result.ts';

type Bounds = {
  readonly min: number;
  readonly max: number;
  readonly unit: string;
  readonly optional: boolean;
};

/** A number as people type it: comma or point, a true minus, fractions such as 1/250, a unit after it. */
export function readNumber(text: string, bounds: Bounds): Result<number | null, string> {
  const plain = text
    .trim()
    .replaceAll('−', '-')
    .replace(',', '.')
    .replace(/\s*[a-zA-Z°%/²³]+$/, '')
    .replace(/^(f\/|f)/i, '');
  if (plain === '') {
    if (bounds.optional && text.trim() === '') return ok(null);
    return fail(
      `found ${text.trim() === '' ? 'nothing' : `‘${text.trim()}’`}, expected ${rangeText(bounds)}`,
    );
  }
  const value = fromFraction(plain);
  if (!Number.isFinite(value) || value < bounds.min || value > bounds.max)
    return fail(`found ‘${text.trim().slice(0, 24)}’, expected ${rangeText(bounds)}`);
  return ok(value);
}

function fromFraction(plain: string): number {
  const parts = plain.split('/');
  if (parts.length > 2 || parts.some((part) => part.trim() === '')) return NaN;
  const [first = NaN, second] = parts.map(Number);
  return second === undefined ? first : first / second;
}

const rangeText = ({ min, max, unit }: Bounds): string =>
  `a number from ${bound(min)} to ${bound(max)}${unit === '' ? '' : ` ${unit}`}`;

const bound = (value: number): string =>
  (value > 0 && value < 0.1 ? `1/${Math.round(1 / value)}` : String(value)).replace('-', '−');
