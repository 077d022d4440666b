export type Axis = 'latitude' | 'longitude';

export type Token =
  | { readonly kind: 'number'; readonly text: string }
  | { readonly kind: 'mark'; readonly order: 0 | 1 | 2 }
  /** N, S, E, W, or a word such as 'lat', which names the axis and leaves the sign to the number. */
  | { readonly kind: 'axis'; readonly axis: Axis; readonly sign: 1 | -1 | null }
  | { readonly kind: 'separator' };

/** What every variant of a sign or mark is read as, before anything else looks at the text. */
const SAME_CHARACTER: readonly (readonly [RegExp, string])[] = [
  [/[\u2010-\u2015\u2212\uFE63\uFF0D]/g, '-'],
  [/[\u00BA\u02DA\u2218\u2070\uFF9F]/g, '°'],
  [/[\u2018\u2019\u201A\u201B\u2032\u2035\u02B9\u02BC\u02B0\u02CA\u00B4\u0060\uFF07\u05F3]/g, "'"],
  [/[\u201C-\u201F\u2033\u2036\u02BA\u02EE\uFF02\u05F4]|''/g, '"'],
  [/\uFF0C|\u060C/g, ','],
  [/[\u200B-\u200F\u202A-\u202E\u2060\uFEFF]/g, ''],
];

/** Words that stand for a mark, an axis or a letter. */
const SAME_WORD: readonly (readonly [RegExp, string])[] = [
  [/(\d)\s*d\s*(\d+(?:[.,]\d+)?)\s*m(?![a-z])/gi, "$1°$2'"],
  [/('\s*\d+(?:[.,]\d+)?)\s*s(?=[\s,;NSEW]|$)/g, '$1"'],
  [/(\d)\s*(?:degrees|degree|deg)(?![a-z])\.?/gi, '$1°'],
  [/(\d)\s*(?:minutes|minute|min)(?![a-z])\.?/gi, "$1'"],
  [/(\d)\s*(?:seconds|second|sec)(?![a-z])\.?/gi, '$1"'],
  [/\blat(?:itude)?\b\.?\s*[:=]?/gi, '{lat}'],
  [/\b(?:lon|lng|long|longitude)\b\.?\s*[:=]?/gi, '{lon}'],
];

const TOKEN = /\s*(?:([+-]?(?:\d+(?:\.\d*)?|\.\d+))|([°'"])|(\{lat\}|\{lon\}|[a-z]+)|([,;/|]))/iy;

const AXES: Readonly<Record<string, Token>> = {
  n: { kind: 'axis', axis: 'latitude', sign: 1 },
  s: { kind: 'axis', axis: 'latitude', sign: -1 },
  e: { kind: 'axis', axis: 'longitude', sign: 1 },
  w: { kind: 'axis', axis: 'longitude', sign: -1 },
  north: { kind: 'axis', axis: 'latitude', sign: 1 },
  south: { kind: 'axis', axis: 'latitude', sign: -1 },
  east: { kind: 'axis', axis: 'longitude', sign: 1 },
  west: { kind: 'axis', axis: 'longitude', sign: -1 },
  '{lat}': { kind: 'axis', axis: 'latitude', sign: null },
  '{lon}': { kind: 'axis', axis: 'longitude', sign: null },
};

/** The text as tokens, or the first piece of it that is none. */
export const coordinateTokens = (text: string): readonly Token[] | { readonly alien: string } => {
  const plain = decimalPoints(
    [...SAME_CHARACTER, ...SAME_WORD].reduce(
      (changed, [from, to]) => changed.replace(from, to),
      text,
    ),
  ).trim();
  const tokens: Token[] = [];
  const pattern = new RegExp(TOKEN);
  while (pattern.lastIndex < plain.length) {
    const startsAt = pattern.lastIndex;
    const match = pattern.exec(plain);
    const token = match && tokenOf(match);
    if (!token) return { alien: (/\S+/.exec(plain.slice(startsAt)) ?? [plain])[0] };
    tokens.push(token);
  }
  return tokens;
};

const tokenOf = ([, number, mark, word]: RegExpExecArray): Token | null => {
  if (number !== undefined) return { kind: 'number', text: number };
  if (mark === '°') return { kind: 'mark', order: 0 };
  if (mark === "'") return { kind: 'mark', order: 1 };
  if (mark === '"') return { kind: 'mark', order: 2 };
  if (word !== undefined) return AXES[word.toLowerCase()] ?? null;
  return { kind: 'separator' };
};

/**
 * Commas between digits are decimal when the text has no point of its own and something else
 * parts the two numbers: '45,6503 13,7571', but '45,13' is 45 and 13.
 */
const decimalPoints = (text: string): string => {
  if (/\d\.\d/.test(text) || /^\D*\d+,\d{1,3}\D*$/.test(text)) return text;
  const chain = /^(\D*\d+),(\d+),(-?\d+),(\d+\D*)$/.exec(text);
  if (chain) return `${chain[1]}.${chain[2]},${chain[3]}.${chain[4]}`;
  return text.replace(/(\d),(?=\d)/g, '$1.');
};
