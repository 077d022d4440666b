import * as z from 'zod/mini';

import { fail, ok, type Result } from '../units/result.ts';
import { valueAt } from './same-value.ts';

/** One place where a document is not what it should be, in words: 'spots.k3f.latitudeDeg: expected −90 to 90, found 412'. */
export type DocumentFault = {
  readonly path: string;
  readonly expected: string;
  readonly found: string;
};

export const describeFault = ({ path, expected, found }: DocumentFault): string =>
  `${path === '' ? 'the file' : path}: expected ${expected}, found ${found}`;

/** Checks a value of unknown origin against a schema; a refusal lists every fault with its path. */
export function checkDocument<Schema extends z.ZodMiniType>(
  schema: Schema,
  value: unknown,
): Result<z.output<Schema>, readonly DocumentFault[]> {
  const parsed = z.safeParse(schema, value, { reportInput: true });
  if (parsed.success) return ok(parsed.data);
  return fail(
    parsed.error.issues.map((issue) => ({
      path: issue.path.map(String).join('.'),
      expected: expectedText(issue),
      found: foundText(
        issue.code === 'invalid_key' ? String(issue.path.at(-1)) : valueAt(value, issue.path),
      ),
    })),
  );
}

const signed = (bound: number | bigint): string => String(bound).replace('-', '−');

function expectedText(issue: z.core.$ZodIssue): string {
  switch (issue.code) {
    case 'too_small':
      return `${issue.inclusive === false ? 'more than' : 'at least'} ${signed(issue.minimum)}${counted(issue.origin)}`;
    case 'too_big':
      return `${issue.inclusive === false ? 'less than' : 'at most'} ${signed(issue.maximum)}${counted(issue.origin)}`;
    case 'invalid_type':
      return article(issue.expected === 'record' ? 'object' : issue.expected);
    case 'not_multiple_of':
      return 'a whole number';
    case 'invalid_key':
      return issue.issues[0]?.message ?? 'another key';
    case 'invalid_value':
      return `one of ${issue.values.map(String).join(', ')}`;
    case 'unrecognized_keys':
      return `no field called ${issue.keys.join(', ')}`;
    default:
      return issue.message === 'Invalid input' ? 'another form' : issue.message;
  }
}

const counted = (origin: string): string => (origin === 'string' ? ' characters' : '');

const article = (type: string): string => (/^[aeiou]/.test(type) ? `an ${type}` : `a ${type}`);

function foundText(value: unknown): string {
  if (value === undefined) return 'nothing';
  if (value === null) return 'null';
  if (typeof value === 'number') return signed(value);
  if (typeof value === 'string') return `‘${value.length > 40 ? `${value.slice(0, 40)}…` : value}’`;
  if (typeof value === 'boolean') return String(value);
  return Array.isArray(value) ? 'a list' : 'an object';
}
