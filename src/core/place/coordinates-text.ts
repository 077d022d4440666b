import { fail, ok } from '../units/result.ts';
import type { Result } from '../units/result.ts';
import { coordinateTokens } from './coordinates-tokens.ts';
import type { Axis, Token } from './coordinates-tokens.ts';
import type { GeoPoint } from './geo-point.ts';

/** Two phrases for 'Found …; expected …'. */
export type CoordinatesProblem = { readonly found: string; readonly expected: string };

type Parsed<Value> = Result<Value, CoordinatesProblem>;
type Angle = { readonly axis: Axis | null; readonly valueDeg: number };

const TWO_NUMBERS = 'latitude and longitude, such as 45.6503, 13.7571 or 45°39′01″ N 13°45′26″ E';
const LETTERS = 'N, S, E and W as the only letters, one at each number or none at all';

/**
 * A place out of pasted text: decimal degrees, degrees and minutes, or degrees, minutes and
 * seconds; signs or letters, before or after; point or comma decimals; a geo: address
 * [rfc5870]. Latitude comes first unless letters say otherwise.
 */
export const parseCoordinates = (text: string): Parsed<GeoPoint> => {
  if (text.trim() === '') return fail({ found: 'nothing', expected: TWO_NUMBERS });
  const address = GEO_ADDRESS.exec(text.trim());
  if (address) return pointFrom(Number(address[1]), Number(address[2]));
  const tokens = coordinateTokens(text.trim().replace(/^\((.*)\)$/s, '$1'));
  if ('alien' in tokens) {
    const piece = text.includes(tokens.alien) ? tokens.alien : text.trim();
    return fail({ found: quoted(piece), expected: TWO_NUMBERS });
  }
  const halves = twoHalves(dropLabels(tokens));
  if (!halves.ok) return halves;
  const first = angleFrom(halves.value[0]);
  if (!first.ok) return first;
  const second = angleFrom(halves.value[1]);
  if (!second.ok) return second;
  return ordered(first.value, second.value);
};

const GEO_ADDRESS =
  /^geo:(-?\d+(?:\.\d+)?),(-?\d+(?:\.\d+)?)(?:,-?\d+(?:\.\d+)?)?(?:;crs=wgs84)?(?:;(?!crs=)[^;?]*)*(?:\?.*)?$/i;

const quoted = (text: string): string => `“${text.length > 40 ? `${text.slice(0, 39)}…` : text}”`;

/** Beside letters, words such as 'lat' say nothing new. */
const dropLabels = (tokens: readonly Token[]): readonly Token[] =>
  tokens.some((token) => token.kind === 'axis' && token.sign !== null)
    ? tokens.filter((token) => token.kind !== 'axis' || token.sign !== null)
    : tokens;

type Halves = readonly [readonly Token[], readonly Token[]];

const twoHalves = (tokens: readonly Token[]): Parsed<Halves> => {
  const numbers = indicesOf(tokens, (token) => token.kind === 'number');
  if (numbers.length < 2)
    return fail({
      found: numbers.length === 0 ? 'no number' : 'one number only',
      expected: TWO_NUMBERS,
    });
  const axes = indicesOf(tokens, (token) => token.kind === 'axis');
  if (axes.length !== 0 && axes.length !== 2)
    return fail({
      found: `${axes.length === 1 ? 'one letter' : `${axes.length} letters`} for two numbers`,
      expected: LETTERS,
    });
  const cut = cutIndex(tokens, numbers, axes);
  if (cut === undefined)
    return fail({ found: `${numbers.length} numbers in a row`, expected: TWO_NUMBERS });
  return ok([tokens.slice(0, cut), tokens.slice(cut)]);
};

/** Index of the token with which the second angle begins. */
const cutIndex = (
  tokens: readonly Token[],
  numbers: readonly number[],
  axes: readonly number[],
): number | undefined => {
  const [firstAxis, secondAxis] = axes;
  if (firstAxis !== undefined && secondAxis !== undefined)
    return firstAxis < (numbers[0] ?? 0) ? secondAxis : firstAxis + 1;
  const separators = indicesOf(
    tokens,
    (token, index) =>
      token.kind === 'separator' && index > (numbers[0] ?? 0) && index < (numbers.at(-1) ?? 0),
  );
  if (separators.length > 0) return separators.length === 1 ? separators[0] : undefined;
  const degreeMarks = indicesOf(tokens, (token) => token.kind === 'mark' && token.order === 0);
  if (degreeMarks[1] !== undefined)
    return degreeMarks.length === 2 ? degreeMarks[1] - 1 : undefined;
  return numbers.length % 2 === 0 ? numbers[numbers.length / 2] : undefined;
};

const indicesOf = (
  tokens: readonly Token[],
  wanted: (token: Token, index: number) => boolean,
): readonly number[] => tokens.flatMap((token, index) => (wanted(token, index) ? [index] : []));

const PART_NAMES = ['degrees', 'minutes', 'seconds'] as const;

const angleFrom = (tokens: readonly Token[]): Parsed<Angle> => {
  const axis = tokens.find((token) => token.kind === 'axis');
  const texts = tokens.flatMap((token) => (token.kind === 'number' ? [token.text] : []));
  const [degrees] = texts;
  if (degrees === undefined) return fail({ found: 'one number only', expected: TWO_NUMBERS });
  if (texts.length > 3 || !marksFit(tokens))
    return fail({
      found: `an angle of ${texts.length} numbers whose marks do not fit`,
      expected: 'degrees °, minutes ′ and seconds ″ in this order',
    });
  if (axis && axis.sign !== null && /^[+-]/.test(degrees))
    return fail({
      found: `both a sign and a letter at ${quoted(degrees)}`,
      expected: 'one of them',
    });
  const problem = partsProblem(texts);
  if (problem) return fail(problem);
  const sizeDeg = texts.reduce((sum, text, part) => sum + Math.abs(Number(text)) / 60 ** part, 0);
  const sign = axis?.sign ?? (degrees.startsWith('-') ? -1 : 1);
  return ok({ axis: axis?.axis ?? null, valueDeg: sign * sizeDeg });
};

const partsProblem = (texts: readonly string[]): CoordinatesProblem | null => {
  for (const [part, text] of texts.entries()) {
    const name = PART_NAMES[part] ?? 'seconds';
    if (part < texts.length - 1 && !Number.isInteger(Number(text)))
      return {
        found: `${text} ${name} with more behind`,
        expected: 'a fraction in the last part only',
      };
    if (part > 0 && (/^[+-]/.test(text) || Number(text) >= 60))
      return { found: `${text} ${name}`, expected: `${name} from 0 to under 60` };
  }
  return null;
};

/** Each mark stands behind the number of its own order. */
const marksFit = (tokens: readonly Token[]): boolean => {
  let numbersSeen = 0;
  let lastKind: Token['kind'] | null = null;
  for (const token of tokens) {
    if (token.kind === 'number') numbersSeen += 1;
    if (token.kind === 'mark' && (lastKind !== 'number' || token.order !== numbersSeen - 1))
      return false;
    lastKind = token.kind;
  }
  return true;
};

const ordered = (first: Angle, second: Angle): Parsed<GeoPoint> => {
  if (first.axis !== null && first.axis === second.axis)
    return fail({
      found: `two ${first.axis}s`,
      expected: 'one latitude (N or S) and one longitude (E or W)',
    });
  return first.axis === 'longitude'
    ? pointFrom(second.valueDeg, first.valueDeg)
    : pointFrom(first.valueDeg, second.valueDeg);
};

const pointFrom = (latitudeDeg: number, longitudeDeg: number): Parsed<GeoPoint> => {
  if (!(Math.abs(latitudeDeg) <= 90))
    return fail({
      found: `a latitude of ${latitudeDeg}°`,
      expected: 'a latitude between 90° S and 90° N, before the longitude',
    });
  if (!(Math.abs(longitudeDeg) <= 180))
    return fail({
      found: `a longitude of ${longitudeDeg}°`,
      expected: 'a longitude between 180° W and 180° E',
    });
  return ok({ latitudeDeg, longitudeDeg });
};
