import fc from 'fast-check';
import { describe, expect, test } from 'vitest';

import { SKY_CONDITIONS } from '../../../src/core/daylight/sky-condition.ts';
import { editLight, editSetup, together } from '../../../src/core/plan/edits.ts';
import type { Light } from '../../../src/core/plan/setup-schema.ts';
import { setupView } from '../../../src/core/plan/setup-view.ts';
import { defined } from '../../support/defined.ts';
import { demoMinute, viewOfMinute } from '../../support/demo-minute.ts';
import { expectFixesToFix } from '../../support/fix-law.ts';

const span = (min: number, max: number): fc.Arbitrary<number> =>
  fc.double({ min, max, noNaN: true });

/** As a crew would build it: surfaces no farther from the head than a few metres, subjects not in the patch. */
const bounce: fc.Arbitrary<Light['bounce']> = fc.record({
  reflectance: span(0.1, 0.9),
  colour: fc.constantFrom('', 'b06040'),
  headToSurfaceM: span(0.3, 1.5),
  incidenceDeg: span(0, 50),
  exitDeg: span(0, 50),
  panelSideM: fc.option(span(0.6, 2), { nil: null }),
});

const changed: fc.Arbitrary<Partial<Light>> = fc.record({
  modifierId: fc.constantFrom('reflector', 'octabox', 'umbrella', 'long-throw'),
  diffuser: fc.boolean(),
  grid: fc.boolean(),
  headCount: fc.integer({ min: 1, max: 3 }),
  gelId: fc.constantFrom(null, 'cto-half'),
  secondGelId: fc.constantFrom(null, 'cto-full'),
  featherDeg: fc.constantFrom(0, 0, 15, 30, 45, 60),
  bounce: fc.option(bounce, { nil: null }),
  distanceM: span(1.6, 6),
  angleDeg: span(-180, 180),
  heightM: span(0.5, 3.5),
});

describe('the path that checks recipes', () => {
  test(
    'agrees with the recipe over random lights, bounced, feathered, gelled, several on a side',
    { timeout: 120_000 },
    () => {
      let recipes = 0;
      const minute = fc.record({
        key: changed,
        fill: changed,
        role: fc.constantFrom('fill' as const, 'key' as const, 'rim' as const, 'cross' as const),
        clock: fc.constantFrom('19:40', '20:20', '20:50', '21:10'),
        condition: fc.constantFrom(...SKY_CONDITIONS),
        rows: fc.integer({ min: 1, max: 3 }),
      });
      fc.assert(
        fc.property(minute, ({ key, fill, role, clock, condition, rows }) => {
          const asked = demoMinute(
            'quartet',
            clock,
            condition,
            editSetup('quartet', { rows, people: 6, holdStops: 0.5 }),
            editLight('quartet', 'key', key),
            editLight('quartet', 'fill', { ...fill, role, stops: role === 'key' ? 0 : -1.5 }),
          );
          const view = setupView(asked);
          expect(view.ok, JSON.stringify(view)).toBe(true);
          if (view.ok && view.value.answer.ok) recipes += 1;
        }),
        { numRuns: 120 },
      );
      expect(recipes).toBeGreaterThan(30);
    },
  );
});

/** The key bounced, or feathered, and the fill far too strong to matter: the key runs out first. */
const shortWith = (clock: string, fields: Partial<Light>): Parameters<typeof expectFixesToFix>[0] =>
  demoMinute(
    'quartet',
    clock,
    'clear',
    together(
      editLight('quartet', 'key', { angleDeg: 70, distanceM: 3.5, ...fields }),
      editLight('quartet', 'fill', { distanceM: 3, modifierId: 'long-throw', stops: -3 }),
      editSetup('quartet', { spreadLimitStops: 3, holdStops: 1 }),
    ),
  );

describe('a fix fixes', () => {
  const offAWall: Light['bounce'] = {
    reflectance: 0.8,
    colour: '',
    headToSurfaceM: 0.8,
    incidenceDeg: 20,
    exitDeg: 25,
    panelSideM: null,
  };

  test(
    'a bounced key that runs out comes nearer, or is aimed straight',
    { timeout: 60_000 },
    () => {
      const asked = shortWith('20:25', { bounce: offAWall, distanceM: 5 });
      const { answer } = viewOfMinute(asked);
      expect(answer.ok ? null : answer.problem).toMatchObject({
        kind: 'sky-above-reach',
        role: 'key',
      });
      const kinds = expectFixesToFix(asked).map(({ changes }) => defined(changes[0]).kind);
      expect(kinds).toContain('aim');
      expect(kinds).toContain('distance');
    },
  );

  test(
    'a feathered key that runs out is turned back as far as it has to be',
    { timeout: 60_000 },
    () => {
      const asked = shortWith('20:12', { featherDeg: 56 });
      const { answer } = viewOfMinute(asked);
      expect(answer.ok ? null : answer.problem).toMatchObject({
        kind: 'sky-above-reach',
        role: 'key',
      });
      const feather = defined(
        expectFixesToFix(asked)
          .flatMap(({ changes }) => changes)
          .find(({ kind }) => kind === 'feather'),
      );
      expect(feather).toMatchObject({ more: false });
    },
  );
});
