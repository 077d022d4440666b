import { expect, test } from 'vitest';

import { bounceTint } from '../../../src/core/plan/bounce-tint.ts';
import type { Light } from '../../../src/core/plan/setup-schema.ts';
import { defined } from '../../support/defined.ts';
import { caseOfMinute, demoMinute } from '../../support/demo-minute.ts';

const { light, head } = defined(caseOfMinute(demoMinute('quartet', '20:00', 'clear')).sources[0]);
const off = (colour: string | null): Pick<Light, 'bounce'> => ({
  bounce:
    colour === null
      ? null
      : {
          reflectance: 0.5,
          colour,
          headToSurfaceM: 1,
          incidenceDeg: 20,
          exitDeg: 20,
          panelSideM: null,
        },
});
const tint = (colour: string | null): ReturnType<typeof bounceTint> =>
  bounceTint({ head, light: { ...light, ...off(colour) } });

test('a grey wall and one painted white tint nothing, and neither does a light aimed straight', () => {
  expect([tint(null), tint(''), tint('808080'), tint('f4f4f4')]).toEqual([null, null, null, null]);
});

test('brick warms skin, a blue door cools it, grass turns it green (common practice)', () => {
  expect(defined(tint('b06040')).warmerMired).toBeGreaterThan(20);
  expect(defined(tint('4060a0')).warmerMired).toBeLessThan(-20);
  expect(defined(tint('5a8a3a')).greener).toBeGreaterThan(4);
});
