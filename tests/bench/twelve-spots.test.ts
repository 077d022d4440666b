import { expect, test } from 'vitest';
import { readShootFile } from '../../src/exchange/shoot-file.ts';
import { twelveSpotShootFile } from './twelve-spots.ts';

test('the file of the bench is one the app reads, with twelve spots', async () => {
  const read = await readShootFile(twelveSpotShootFile(), async () => null);
  expect(read).toMatchObject({ ok: true });
  expect(read.ok && Object.keys(read.value.shoot.spots)).toHaveLength(12);
});
