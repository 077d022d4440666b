import { spawnSync } from 'node:child_process';
import { mkdtempSync, readdirSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join, relative, resolve, sep } from 'node:path';
import { describe, expect, test } from 'vitest';
import { architectureProblems } from './support/import-problems.ts';
import { readSource, type SourceFile } from './support/source-file.ts';

const SRC = resolve('src');

const filesUnderSrc = (): readonly SourceFile[] =>
  readdirSync(SRC, { recursive: true, withFileTypes: true })
    .filter((entry) => entry.isFile() && /\.tsx?$/.test(entry.name))
    .map((entry) => {
      const path = join(entry.parentPath, entry.name);
      return readSource(relative(SRC, path).split(sep).join('/'), readFileSync(path, 'utf8'));
    });

/** A small tree that keeps every rule; each planted file is added to it. */
const CLEAN: Readonly<Record<string, string>> = {
  'main.tsx': "import { Shell } from './app/shell/Shell.tsx';\nShell();",
  'core/units/angle.ts': 'export const one = 1;',
  'core/units/civil-time.ts': "import { DateTime } from 'luxon';\nDateTime.fromMillis(0);",
  'core/place/geo-point.ts': "import { one } from '../units/angle.ts';\nexport { one };",
  'core/sun-moon/sun-position.ts': "import { getPosition } from 'suncalc';\ngetPosition();",
  'core/sky/framing.ts': "import type { one } from '../units/angle.ts';\nnew Date(0);",
  'core/strobe/reach.ts': 'export const reach = 1; // not Date.now()',
  'core/plan/shoot.ts': "import * as z from 'zod/mini';\nz.string();",
  'worker/compute.worker.ts': "import { reach } from '../core/strobe/reach.ts';\nreach;",
  'worker/client.ts': "new Worker(new URL('./compute.worker.ts', import.meta.url));",
  'app/map/Map.tsx': "import 'leaflet/dist/leaflet.css';\nimport { map } from 'leaflet';\nmap();",
  'app/screens/day/Day.tsx': "import { Map } from '../../map/Map.tsx';\nMap();",
  'app/screens/scout/Scout.tsx': "import './scout.css';\nexport const Scout = 1;",
  'app/shell/Shell.tsx': "const day = () => import('../screens/day/Day.tsx');\nday();",
};

const problemsWith = (planted: Readonly<Record<string, string>>): readonly string[] =>
  architectureProblems(
    Object.entries({ ...CLEAN, ...planted }).map(([path, text]) => readSource(path, text)),
  );

describe('the check finds what is planted', () => {
  test('a tree that keeps the rules has no problem', () => {
    expect(problemsWith({})).toEqual([]);
  });

  test.each([
    ['upward in the core', 'core/units/x.ts', "import '../sky/framing.ts';"],
    ['upward from the core to the app', 'core/sky/x.ts', "import '../../app/map/Map.tsx';"],
    ['upward, for a type only', 'core/units/x.ts', "import type { A } from '../sky/framing.ts';"],
    ['upward, by an import type', 'core/units/x.ts', "type A = import('../sky/framing.ts').A;"],
    ['upward, by a dynamic import', 'core/units/x.ts', "void import('../sky/framing.ts');"],
    ['upward, by a re-export', 'core/units/x.ts', "export * from '../sky/framing.ts';"],
    ['upward, by an address', 'core/sky/x.ts', "new URL('../../app/x.json', import.meta.url);"],
    ['a dynamic import of no plain string', 'core/units/x.ts', 'void import(name);'],
    ['sideways in the core', 'core/strobe/x.ts', "import '../sky/framing.ts';"],
    ['sideways from screen to screen', 'app/screens/day/x.ts', "import '../scout/Scout.tsx';"],
    ['sideways to the styles of a screen', 'app/screens/day/x.ts', "import '../scout/scout.css';"],
    ['from a screen to the shell', 'app/screens/day/x.ts', "import '../../shell/Shell.tsx';"],
    ['from the worker to the app', 'worker/x.ts', "import '../app/map/Map.tsx';"],
    ['from the app to the worker', 'app/ui/x.ts', "import '../../worker/client.ts';"],
    ['Leaflet outside the map', 'app/screens/scout/x.ts', "import 'leaflet';"],
    ['suncalc outside sun and moon', 'core/sky/x.ts', "import 'suncalc';"],
    ['Luxon in units beside civil time', 'core/units/x.ts', "import 'luxon';"],
    ['Luxon in a screen', 'app/screens/day/x.ts', "import 'luxon';"],
    ['the large zod instead of the small', 'core/plan/x.ts', "import 'zod';"],
    ['React in the core', 'core/plan/x.ts', "import 'react';"],
    ['a part of Node', 'storage/x.ts', "import 'node:fs';"],
    ['out of src', 'core/units/x.ts', "import '../../../package.json';"],
    ['without .ts', 'core/place/x.ts', "import '../units/angle';"],
    ['a folder outside the table', 'core/weather/x.ts', "import '../units/angle.ts';"],
    ['the clock', 'core/plan/x.ts', 'Date.now();'],
    ['the clock by index', 'core/plan/x.ts', "Date['now']();"],
    ['the clock as a new date', 'core/plan/x.ts', 'new Date();'],
    ['the clock as text', 'core/plan/x.ts', 'Date();'],
    ['chance', 'core/plan/x.ts', 'Math.random();'],
    ['the clock through Luxon', 'core/plan/x.ts', 'DateTime.now();'],
    ['the machine zone through Luxon', 'core/plan/x.ts', 'DateTime.local();'],
    ['DateTime renamed', 'core/plan/x.ts', "import { DateTime as D } from 'luxon';"],
    ['settings of Luxon', 'core/plan/x.ts', "import { Settings } from 'luxon';"],
    ['an index file', 'core/units/index.ts', ''],
    ['a folder of odds and ends', 'core/units/helpers/x.ts', ''],
    ['a file of odds and ends', 'app/ui/utils.ts', ''],
    ['a file not in kebab case', 'core/units/bigAngle.ts', ''],
    ['Pascal case without a component', 'app/ui/BigButton.ts', ''],
    ['a default export', 'core/units/x.ts', 'export default 1;'],
    ['a file of 201 code lines', 'core/units/x.ts', 'f();\n'.repeat(201)],
  ])('%s', (_kind, path, text) => {
    expect(problemsWith({ [path]: text })).toEqual([expect.stringContaining(path)]);
  });

  test('a cycle, of types too', () => {
    const problems = problemsWith({
      'core/sky/a.ts': "import { b } from './b.ts';\nb;",
      'core/sky/b.ts': "import type { A } from './a.ts';\nexport const b = 1;",
    });
    expect(problems).toEqual(['cycle: core/sky/a.ts → core/sky/b.ts → core/sky/a.ts']);
  });

  test('blank lines, comments and data files do not count towards the length', () => {
    const lines = 'f(); // one\n\n/* two\n three */\n'.repeat(200);
    expect(problemsWith({ 'core/units/x.ts': lines })).toEqual([]);
    expect(problemsWith({ 'core/units/x.data.ts': 'f();\n'.repeat(201) })).toEqual([]);
  });

  test('a file that cannot be read as TypeScript stops the check', () => {
    expect(() => problemsWith({ 'core/units/x.ts': 'const = 1;' })).toThrow('core/units/x.ts');
  });
});

/** What the compiler says of a file planted beside the core, under the core's settings. */
const compile = (text: string): { readonly status: number | null; readonly output: string } => {
  const folder = mkdtempSync(join(tmpdir(), 'undersky-planted-'));
  try {
    writeFileSync(join(folder, 'planted.ts'), text);
    const config = { extends: resolve('src/core/tsconfig.json'), include: ['planted.ts'] };
    writeFileSync(join(folder, 'tsconfig.json'), JSON.stringify(config));
    const tsc = resolve('node_modules/typescript/bin/tsc');
    const { status, stdout } = spawnSync(process.execPath, [tsc, '--noEmit', '-p', folder]);
    return { status, output: stdout.toString() };
  } finally {
    rmSync(folder, { recursive: true });
  }
};

describe('the compiler keeps the browser out of the core', () => {
  test('a file that uses only the language compiles', () => {
    expect(compile('export const one = Math.abs(-1);')).toEqual({ status: 0, output: '' });
  });

  test.each(['document', 'window', 'fetch', 'localStorage', 'setTimeout', 'console', 'process'])(
    '%s is a type error',
    (name) => {
      const { status, output } = compile(`export const found = ${name};`);
      expect(status).not.toBe(0);
      expect(output).toContain(name);
    },
  );
});

describe('the source tree', () => {
  const files = filesUnderSrc();

  test('is there', () => {
    expect(files.map(({ path }) => path)).toContain('core/units/angle.ts');
  });

  test('keeps every rule of the architecture', () => {
    expect(architectureProblems(files)).toEqual([]);
  });

  test('has no top-level folder beside src, tests and public', () => {
    const ignored = readFileSync('.gitignore', 'utf8').split('\n');
    const folders = readdirSync('.', { withFileTypes: true })
      .filter((entry) => entry.isDirectory() && !ignored.includes(`${entry.name}/`))
      .map(({ name }) => name);
    expect(['.git', '.ci', 'public', 'src', 'tests']).toEqual(expect.arrayContaining(folders));
  });
});
