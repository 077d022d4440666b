import { expect, test } from 'vitest';
import { figureTable } from './figure-table.ts';

test('the table says what was measured, the target, their ratio and what is missed', () => {
  expect(
    figureTable([
      { figure: 'one column', value: 7.5, unit: 'ms', target: 15, ok: true },
      { figure: 'all script', value: 312.4, unit: 'KB', target: 250, ok: false },
      { figure: 'long tasks', value: 0, unit: 'tasks', target: 0, ok: true },
    ]),
  ).toEqual([
    '            measured   target  ratio',
    'one column    7.5 ms    15 ms   0.50  met',
    'all script    312 KB   250 KB   1.25  MISSED',
    'long tasks   0 tasks  0 tasks      –  met',
  ]);
});
