import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { parseSync } from 'vite';
import { describe, expect, test } from 'vitest';
import { SOURCES } from '../../../src/core/units/sources.ts';

/** A key, with or without a chapter behind a comma, starts small and holds a capital or a digit, which no plain word in brackets does. */
const citedKeys = (file: string, text: string): readonly string[] =>
  parseSync(file, text).comments.flatMap(({ value }) =>
    [...value.matchAll(/\[([a-z][A-Za-z]*[A-Z0-9][A-Za-z0-9]*)(?:, [^\]]+)?\]/g)].flatMap(
      ([, key]) => (key === undefined ? [] : [key]),
    ),
  );

const CORE = 'src/core';

const cited = readdirSync(CORE, { recursive: true, encoding: 'utf8' })
  .filter((path) => path.endsWith('.ts') && !path.endsWith('sources.ts'))
  .flatMap((path) =>
    citedKeys(path, readFileSync(join(CORE, path), 'utf8')).map((key) => ({ path, key })),
  );

describe('the bibliography', () => {
  test('the reading of comments finds a planted key and leaves code and ranges alone', () => {
    expect(
      citedKeys(
        'x.ts',
        '/** Good to 0.1. [nobody1999] */ const a = b[c1]; // [0, 1] [nobody2001, ch. 3]',
      ),
    ).toEqual(['nobody1999', 'nobody2001']);
  });

  test('every key cited in the core is in it', () => {
    expect(cited.filter(({ key }) => !(key in SOURCES))).toEqual([]);
  });

  test('every entry of it is cited in the core', () => {
    const keys = new Set<string>(cited.map(({ key }) => key));
    expect(Object.keys(SOURCES).filter((key) => !keys.has(key))).toEqual([]);
  });
});
