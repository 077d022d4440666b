import { test } from 'vitest';
import { benchColumn } from './column.bench.ts';
test('bench', () => { console.log(benchColumn()); console.log(benchColumn()); }, 100000);
