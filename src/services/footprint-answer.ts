import { fail, ok, type Result } from '../core/units/result.ts';
import { featuresOfElements } from './footprint-elements.ts';

export type Footprints = {
  /** A feature collection with the database's tags as properties, to be read like an outline file. */
  readonly geoJson: string;
  readonly count: number;
  /** When the database was last brought up to date; '' where it does not say. */
  readonly dated: string;
  /** The notice that the database wants shown beside its data; '' where it sends none. */
  readonly notice: string;
  /** Sentences. */
  readonly notes: readonly string[];
};

export type FootprintProblem = {
  readonly kind:
    | 'cancelled'
    | 'bad-address'
    | 'too-wide'
    | 'unreachable'
    | 'too-slow'
    | 'busy'
    | 'refused'
    | 'too-large'
    | 'unreadable'
    | 'gave-up'
    | 'nothing';
  /** What was found and what can be done. */
  readonly sentence: string;
};

type Fields = Readonly<Record<string, unknown>>;

/** What the text of an answer holds; the database says in it when it gave up half way. */
export function footprintsFrom(text: string): Result<Footprints, FootprintProblem> {
  if (/^\s*</.test(text))
    return fail({
      kind: 'unreadable',
      sentence:
        'The server answered with a web page instead of outlines. It may be busy, or the address is not that of a query interface.',
    });
  const answer = parsedObject(text);
  if (answer === null || !Array.isArray(answer['elements']))
    return fail({
      kind: 'unreadable',
      sentence:
        answer === null
          ? 'The answer breaks off or is no JSON. Try again; if it stays so, choose a smaller area.'
          : 'The answer holds no list of elements; expected that of a query interface.',
    });
  const remark = plainLine(answer['remark']);
  if (/error|timed out|out of memory/i.test(remark))
    return fail({
      kind: 'gave-up',
      sentence: `The server gave up before it was done: “${remark}”. Choose a smaller area, or try again later.`,
    });
  const { features, withoutCorners } = featuresOfElements(answer['elements']);
  if (features.length === 0)
    return fail({
      kind: 'nothing',
      sentence:
        'The database knows no building, wall or trees in this square. That does not mean that none stand there.',
    });
  const about = parsedFields(answer['osm3s']);
  return ok({
    geoJson: JSON.stringify({ type: 'FeatureCollection', features }),
    count: features.length,
    dated: /^\d{4}-\d\d-\d\d/.exec(plainLine(about['timestamp_osm_base']))?.[0] ?? '',
    notice: plainLine(about['copyright']),
    notes: [
      ...(withoutCorners > 0 ? [`${withoutCorners} came without corners and were left out.`] : []),
      ...(remark === '' ? [] : [`The server remarks: “${remark}”.`]),
    ],
  });
}

function parsedObject(text: string): Fields | null {
  try {
    const value: unknown = JSON.parse(text);
    return typeof value === 'object' && value !== null ? (value as Fields) : null;
  } catch {
    return null;
  }
}

const parsedFields = (value: unknown): Fields =>
  typeof value === 'object' && value !== null ? (value as Fields) : {};

/** A text of the server as one short plain line. */
const plainLine = (value: unknown): string =>
  typeof value === 'string'
    ? value
        .replace(/<[^>]*>/g, ' ')
        .replace(/[\p{Cc}\p{Cf}\s]+/gu, ' ')
        .trim()
        .slice(0, 200)
    : '';
