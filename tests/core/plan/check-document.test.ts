import * as z from 'zod/mini';
import { describe, expect, test } from 'vitest';

import { checkDocument, describeFault } from '../../../src/core/plan/check-document.ts';
import { demoKit } from '../../../src/core/plan/demo-kit.ts';
import { demoShoot } from '../../../src/core/plan/demo-shoot.ts';
import { KIT } from '../../../src/core/plan/kit.ts';
import { type Setup } from '../../../src/core/plan/setup-schema.ts';
import { SHOOT, type Shoot, type Spot } from '../../../src/core/plan/shoot.ts';
import { defined } from '../../support/defined.ts';

const faults = (schema: z.ZodMiniType, value: unknown): readonly string[] => {
  const checked = checkDocument(schema, value);
  return checked.ok ? [] : checked.problem.map(describeFault);
};

const shootWith = (change: (shoot: Shoot) => void): unknown => {
  const shoot = structuredClone(demoShoot());
  change(shoot);
  return shoot;
};

const pier =
  (fields: Partial<Spot>) =>
  (shoot: Shoot): void =>
    void Object.assign(defined(shoot.spots.pier), fields);
const cello =
  (fields: Partial<Setup>) =>
  (shoot: Shoot): void =>
    void Object.assign(defined(shoot.setups.cello), fields);

describe('a document that is not what it should be', () => {
  test('the demo’s own documents are what they should be, and are handed on unchanged', () => {
    expect(checkDocument(SHOOT, demoShoot())).toEqual({ ok: true, value: demoShoot() });
    expect(checkDocument(KIT, demoKit())).toEqual({ ok: true, value: demoKit() });
  });

  test.each<readonly [string, (shoot: Shoot) => void, path: string, found: string]>([
    ['a latitude off the globe', pier({ latitudeDeg: 412 }), 'spots.pier.latitudeDeg', '412'],
    ['a longitude off the globe', pier({ longitudeDeg: -200 }), 'spots.pier.longitudeDeg', '−200'],
    ['a date that does not exist', (shoot) => void (shoot.date = '2027-02-30'), 'date', '02-30'],
    ['a zone that no one keeps', pier({ zone: 'Europe/Nowhere' }), 'spots.pier.zone', 'Nowhere'],
    [
      'an hour that no clock has',
      cello({ startClock: '24:10' }),
      'setups.cello.startClock',
      '24:10',
    ],
    ['NaN', cello({ holdStops: NaN }), 'setups.cello.holdStops', 'NaN'],
    ['half a person', cello({ people: 1.5 }), 'setups.cello.people', '1.5'],
  ])('%s is named with its path and what was found', (_, change, path, found) => {
    const sentences = faults(SHOOT, shootWith(change));
    expect(sentences).toHaveLength(1);
    expect(sentences[0]).toContain(`${path}: expected `);
    expect(sentences[0]).toContain('found ');
    expect(sentences[0]).toContain(found);
  });

  test('bounds are named in words: at least −90 for a latitude', () => {
    const low = shootWith(pier({ latitudeDeg: -91 }));
    expect(faults(SHOOT, low)).toEqual([
      'spots.pier.latitudeDeg: expected at least −90, found −91',
    ]);
  });

  test('a missing field, a list for an object, an unknown choice', () => {
    expect(faults(z.object({ a: z.number() }), {})).toEqual([
      'a: expected a number, found nothing',
    ]);
    expect(faults(z.object({ a: z.number() }), [])).toEqual([
      'the file: expected an object, found a list',
    ]);
    expect(faults(z.object({ a: z.enum(['x', 'y']) }), { a: 'z' })).toEqual([
      'a: expected one of x, y, found ‘z’',
    ]);
  });

  test('an id that every object answers to is refused', () => {
    const trap = shootWith((shoot) => {
      Object.defineProperty(shoot.spots, 'constructor', {
        value: shoot.spots.pier,
        enumerable: true,
      });
    });
    expect(faults(SHOOT, trap)[0]).toContain('constructor');
  });

  test('a long text is cut in the sentence', () => {
    const [sentence] = faults(z.object({ a: z.number() }), { a: 'x'.repeat(500) });
    expect(defined(sentence).length).toBeLessThan(100);
  });
});
