import { describe, expect, test } from 'vitest';

import { editKitItem, editLight, editSetup } from '../../../src/core/plan/edits.ts';
import { produce } from 'immer';
import { planB, type PlanBCard } from '../../../src/core/plan/plan-b.ts';
import type { SetupCaseInput } from '../../../src/core/plan/setup-case.ts';
import { runForward } from '../../../src/core/strobe/run-forward.ts';
import { defined } from '../../support/defined.ts';
import { caseOfMinute, demoMinute, viewOfMinute } from '../../support/demo-minute.ts';

const cardsOf = (asked: SetupCaseInput): readonly PlanBCard[] => {
  const cards = planB(asked);
  if (!cards.ok) throw new Error(`expected cards, found ${JSON.stringify(cards.problem)}`);
  return cards.value;
};
const cardOf = <Kind extends PlanBCard['kind']>(
  cards: readonly PlanBCard[],
  kind: Kind,
  is: (card: Extract<PlanBCard, { readonly kind: Kind }>) => boolean = () => true,
): Extract<PlanBCard, { readonly kind: Kind }> =>
  defined(
    cards.find(
      (card): card is Extract<PlanBCard, { readonly kind: Kind }> =>
        card.kind === kind && is(card as Extract<PlanBCard, { readonly kind: Kind }>),
    ),
  );

const asked = demoMinute('quartet', '20:20', 'clear');
const withOwned = (owned: number): SetupCaseInput => ({
  ...asked,
  kit: produce(asked.kit, (draft) => editKitItem('batteries', 'battery-90', { owned })(draft)),
});
const planned = viewOfMinute(asked);
const cards = cardsOf(asked);

const lostWith = (owned: number): Extract<PlanBCard, { readonly kind: 'lost-battery' }> =>
  cardOf(cardsOf(withOwned(owned)), 'lost-battery', (card) => card.batteryId === 'battery-90');

describe('plan B of a setup', () => {
  test('the demo’s quartet at twenty past eight works as planned', () => {
    expect(planned.answer.ok).toBe(true);
  });

  test('a sky two stops darker is solved again as it stands and keeps its hold, ambient with it', () => {
    const [best] = cardOf(cards, 'sky', (card) => card.stops === -2).options;
    expect(best?.changes).toEqual([]);
    if (best?.answer.ok !== true || !planned.answer.ok) throw new Error('expected a recipe');
    const recipe = best.answer.value;
    const { input } = planned;
    const landing = runForward(
      {
        ...input,
        sky: { patchEv: defined(input.sky.patchEv) - 2, meanEv: input.sky.meanEv - 2 },
        ambientOnSubjectEv: input.ambientOnSubjectEv - 2,
      },
      recipe,
    );
    // A sixth of a stop: half of a third-stop dial.
    expect(Math.abs(landing.patchStops + input.hold.stops)).toBeLessThan(1 / 6 + 1e-5);
    expect(Math.abs(defined(landing.lights[0]).faceStops)).toBeLessThan(1 / 6 + 1e-5);
    const opened = planned.answer.value.recipe.cameraEv - recipe.cameraEv;
    // Two dials in third stops: a third.
    expect(Math.abs(opened - 2)).toBeLessThan(1 / 3 + 1e-5);
  });

  test('two stops of sky take two stops off what is in hand, the lights being the same', () => {
    const bright = cardOf(cards, 'sky', (card) => card.stops === 2);
    const dark = cardOf(cards, 'sky', (card) => card.stops === -2);
    const asIs = (card: typeof bright): number =>
      defined(card.options.find(({ changes }) => changes.length === 0)).inHandStops;
    // What ambient adds to the key goes with the sky, so not quite two each way.
    expect(asIs(dark) - asIs(bright)).toBeGreaterThan(3.5);
    expect(asIs(dark) - asIs(bright)).toBeLessThanOrEqual(4 + 1e-9);
  });

  test('where a brighter sky is out of reach every option offered works', () => {
    const tight = cardsOf(
      demoMinute('quartet', '20:20', 'clear', editSetup('quartet', { holdStops: 3.2 })),
    );
    const { options } = cardOf(tight, 'sky', (card) => card.stops === 2);
    expect(options.length).toBeGreaterThan(1);
    const asItStands = defined(options.find(({ changes }) => changes.length === 0));
    expect(asItStands.answer.ok).toBe(false);
    expect(asItStands.inHandStops).toBeLessThan(0);
    for (const option of options) expect(option.answer.ok).toBe(option.changes.length > 0);
  });

  test('a head lost from a pair of equal ones costs one stop (B6: GN 41 for GN 58)', () => {
    const pair = demoMinute(
      'quartet',
      '20:20',
      'clear',
      editSetup('quartet', { holdStops: 0 }),
      editLight('quartet', 'key', { headCount: 2 }),
    );
    const pairCards = cardsOf(pair);
    const { options } = cardOf(pairCards, 'lost-head', (card) => card.lightId === 'key');
    const one = defined(options.find(({ changes }) => changes[0]?.kind === 'heads'));
    const single = viewOfMinute(
      demoMinute('quartet', '20:20', 'clear', editSetup('quartet', { holdStops: 0 })),
    );
    expect(one.inHandStops).toBeCloseTo(
      single.answer.ok ? single.answer.value.recipe.inHandStops : NaN,
      9,
    );
  });

  test('a lost key takes the head of the fill, a lost fill is left out', () => {
    const key = cardOf(cards, 'lost-head', (card) => card.lightId === 'key');
    expect(key.options.map(({ changes }) => changes)).toContainEqual([
      { kind: 'swap-head', lightId: 'key', headId: 'head-400' },
      { kind: 'leave-out', lightIds: ['fill'] },
    ]);
    const easy = demoMinute('quartet', '20:20', 'clear', editSetup('quartet', { holdStops: 1 }));
    const fill = cardOf(cardsOf(easy), 'lost-head', (card) => card.lightId === 'fill');
    const without = defined(fill.options.at(-1));
    expect(without.changes).toEqual([{ kind: 'leave-out', lightIds: ['fill'] }]);
    expect(without.answer.ok && without.answer.value.lights).toHaveLength(1);
    // A key alone has less light on its face than key and fill.
    const { answer } = viewOfMinute(easy);
    expect(without.inHandStops).toBeLessThan(answer.ok ? answer.value.recipe.inHandStops : NaN);
  });

  test('a spare in the car changes nothing', () => {
    const twoOwned = {
      ...asked,
      kit: produce(asked.kit, (draft) => editKitItem('heads', 'head-600', { owned: 2 })(draft)),
    };
    const card = cardOf(cardsOf(twoOwned), 'lost-head', ({ lightId }) => lightId === 'key');
    expect(card.spare).toBe(true);
    expect(card.options[0]?.changes).toEqual([]);
    expect(cardOf(cards, 'lost-head', ({ lightId }) => lightId === 'key').spare).toBe(
      defined(asked.kit.heads['head-600']).owned > 1,
    );
  });

  test('a lost battery is replaced while one is left, and then costs a head', () => {
    const two = lostWith(2);
    expect(two).toMatchObject({ left: 1, inHeads: 1, spare: true });
    expect(two.options.map(({ changes }) => changes)).toEqual([[]]);
    expect(two.charges).toBeGreaterThan(0);
    const one = lostWith(1);
    expect(one).toMatchObject({ left: 0, spare: false });
    for (const { changes } of one.options) expect(changes.length).toBeGreaterThan(0);
    expect(one.options.flatMap(({ changes }) => changes)).not.toContainEqual(
      expect.objectContaining({ headId: 'head-600' }),
    );
  });

  test('a head that would need the lost battery too is no way out', () => {
    const shared = {
      ...asked,
      kit: produce(asked.kit, (draft) => {
        editKitItem('batteries', 'battery-90', { owned: 2 })(draft);
        editKitItem('heads', 'head-400', { batteryId: 'battery-90' })(draft);
      }),
    };
    const card = cardOf(cardsOf(shared), 'lost-battery');
    expect(card).toMatchObject({ left: 1, inHeads: 2, spare: false });
    const changes = card.options.map((option) => option.changes);
    expect(changes).toEqual([[{ kind: 'leave-out', lightIds: ['fill'] }]]);
  });

  test('more wind than a stand bears puts small modifiers or hands in its place', () => {
    const onStands = demoMinute(
      'quartet',
      '20:20',
      'clear',
      editLight('quartet', 'key', {
        standId: 'stand-light',
        modifierId: 'octabox',
        diffuser: true,
      }),
      editLight('quartet', 'fill', { standId: 'stand-heavy' }),
    );
    const wind = cardOf(cardsOf(onStands), 'wind');
    const limit = defined(onStands.kit.stands['stand-light']).maxGustMS;
    expect(wind.expected).toBe(false);
    expect(wind.gustMS).toBeGreaterThan(limit);
    expect(wind.lightIds).toContain('key');
    expect(wind.options.length).toBeGreaterThan(0);
    for (const { changes } of wind.options)
      for (const change of changes) {
        if (change.kind !== 'stand') throw new Error('expected another stand');
        const stand = change.standId === null ? null : defined(onStands.kit.stands[change.standId]);
        expect(stand === null || stand.maxGustMS >= wind.gustMS).toBe(true);
      }
    const gusty = cardsOf({
      ...onStands,
      shoot: produce(onStands.shoot, (draft) => editSetup('quartet', { gustMS: limit + 3 })(draft)),
    });
    expect(cardOf(gusty, 'wind')).toMatchObject({ expected: true, gustMS: limit + 3 });
  });

  test('a setup that is gone has none', () => {
    const none = planB({ ...asked, setupId: 'gone' });
    expect(!none.ok && none.problem.kind).toBe('gone');
  });

  test('the light it is asked in stays the light of the minute', () => {
    expect(caseOfMinute(asked).light).toEqual(planned.light);
  });
});
