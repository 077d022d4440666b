import { describe, expect, test } from 'vitest';

import { headingText, holdText } from '../../../../src/app/screens/setup/heading-text.ts';
import { sharpText } from '../../../../src/app/screens/setup/alternative-text.ts';
import { changeWords } from '../../../../src/app/screens/setup/change-words.ts';
import { fixText } from '../../../../src/app/screens/setup/fix-text.ts';
import { notesOf } from '../../../../src/app/screens/setup/notes.ts';
import { patchText } from '../../../../src/app/screens/setup/patch-text.ts';
import { gapText, problemText } from '../../../../src/app/screens/setup/problem-text.ts';
import { filterText, meterText, originText } from '../../../../src/app/ui/recipe-text.ts';
import { powerText } from '../../../../src/app/ui/power-text.ts';
import { underText } from '../../../../src/app/screens/setup/step-text.ts';
import { demoKit } from '../../../../src/core/plan/demo-kit.ts';
import { demoShoot } from '../../../../src/core/plan/demo-shoot.ts';
import { editSetup } from '../../../../src/core/plan/edits.ts';
import { setupFixes } from '../../../../src/core/plan/setup-fixes.ts';
import { setupView, type SetupView } from '../../../../src/core/plan/setup-view.ts';
import type { Setup } from '../../../../src/core/plan/setup-schema.ts';
import type { Shoot } from '../../../../src/core/plan/shoot.ts';
import { instantAtClock } from '../../../../src/core/units/civil-time.ts';
import { defined } from '../../../support/defined.ts';

const ZONE = 'Europe/Rome';
const at = (clock: string): number => instantAtClock('2027-05-14', clock, ZONE) ?? NaN;

const changed = (setupId: string, fields: Partial<Setup>): Shoot => {
  const shoot = demoShoot();
  editSetup(setupId, fields)(shoot);
  return shoot;
};

const seen = (shoot: Shoot, setupId: string, clock: string): SetupView => {
  const view = setupView({ shoot, kit: demoKit(), setupId, instantMs: at(clock) });
  if (!view.ok) throw new Error(gapText(view.problem));
  return view.value;
};

const problemAt = (shoot: Shoot, setupId: string, clock: string) => {
  const view = seen(shoot, setupId, clock);
  if (view.answer.ok) throw new Error('expected a shortage');
  return problemText(view, view.answer.problem);
};

describe('the heading', () => {
  const shoot = demoShoot();
  const { pier } = shoot.spots;
  const { quartet } = shoot.setups;
  if (pier === undefined || quartet === undefined) throw new Error('the demo changed its ids');

  test('names spot, framing and block in clock times of the spot', () => {
    expect(
      headingText({ spot: pier, setup: quartet, framing: pier.framing, startMs: at('20:00') }),
    ).toBe('Pier head · faces 300°, 35 mm, tilt +6° · 20:00 to 20:40');
  });

  test('a start that clocks skip is said', () => {
    expect(
      headingText({ spot: pier, setup: quartet, framing: pier.framing, startMs: null }),
    ).toContain('a time that clocks skip');
  });

  test('the hold is translated to the other references by their own EV', () => {
    const view = seen(shoot, 'quartet', '20:00');
    const sky = view.light.skyInFrame;
    if (sky === null) throw new Error('expected sky');
    const frame = (2 + sky.patchEv - sky.meanEv).toFixed(1);
    const incident = (2 + sky.patchEv - view.light.incidentEv).toFixed(1);
    expect(holdText(view)).toBe(
      `held 2.0 under the patch = ${frame} under the frame = ${incident} under incident`,
    );
  });
});

describe('why it does not work', () => {
  test('a sky above the reach names the role that runs out, here a fill 9 m away, and both EV', () => {
    const { lights } = defined(demoShoot().setups['quartet']);
    const fill = { ...defined(lights['fill']), distanceM: 9 };
    const far = changed('quartet', { lights: { ...lights, fill } });
    const { headline, why } = problemAt(far, 'quartet', '18:00');
    expect(headline).toMatch(/^Short by \d\.\d, the fill runs out first$/);
    expect(why).toMatch(/stands at EV \d+\.\d; at full power the lights reach EV \d+\.\d/);
  });

  test('sun on the face says how far under the key the unlit face is and how far it should be', () => {
    const { headline } = problemAt(demoShoot(), 'cello', '16:30');
    expect(headline).toMatch(
      /^The sun lights the face: unlit it is 1\.\d under the key, 2\.0 under wanted$/,
    );
  });

  test('behind a panel it is daylight, not the sun, that lights the face', () => {
    const shoot = changed('cello', { shaded: true, unlitUnderStops: 8 });
    expect(problemAt(shoot, 'cello', '16:30').headline).toMatch(/^Daylight lights the face/);
  });

  test('pins that do not go together each say what they cost', () => {
    const shoot = changed('quartet', { pinnedFNumber: 2.8, pinnedIso: 1600 });
    const { headline, why } = problemAt(shoot, 'quartet', '20:00');
    expect(headline).toMatch(/^The pins do not go together: \d+\.\d apart$/);
    expect(why).toMatch(/The pin on (the aperture|ISO) costs \d+\.\d/);
  });

  test.each([
    [{ kind: 'gone' } as const, 'Choose another setup'],
    [{ kind: 'not-in-kit', what: 'head', id: 'lost' } as const, 'Choose another head'],
    [{ kind: 'no-sky' } as const, 'Tilt up'],
    [{ kind: 'does-not-land', worstStops: 0.4 } as const, '0.4'],
  ])('a gap says what is missing and what to do', (gap, part) => {
    expect(gapText(gap)).toContain(part);
  });
});

const textsAt = (shoot: Shoot, setupId: string, clock: string) => {
  const asked = { shoot, kit: demoKit(), setupId, instantMs: at(clock) };
  const base = seen(shoot, setupId, clock);
  return setupFixes(asked).map((fix) => fixText(fix, { base, kit: asked.kit }));
};

describe('fixes', () => {
  test('each is a sentence with what is then in hand', () => {
    const texts = textsAt(demoShoot(), 'quartet', '18:00');
    expect(texts.length).toBeGreaterThan(2);
    for (const { sentence, inHand } of texts) {
      expect(sentence).toMatch(/^[A-Z]/);
      expect(inHand).toMatch(/^\d\.\d in hand/);
    }
    expect(texts.map(({ sentence }) => sentence).join('\n')).toMatch(
      /Later: in reach from 19:\d\d/,
    );
  });

  test('what the kit does not hold cannot be used and says why', () => {
    const sync = textsAt(demoShoot(), 'quartet', '18:00').find(({ sentence }) =>
      sentence.startsWith('Faster sync'),
    );
    expect(sync?.blocked).toContain('in the kit');
  });

  test('a pin in the way is offered for freeing with its cost', () => {
    const shoot = changed('quartet', { pinnedFNumber: 2.8, pinnedIso: 1600 });
    const texts = textsAt(shoot, 'quartet', '20:00');
    expect(texts[0]?.sentence).toMatch(/^Unpin .*: the pin costs \d+\.\d$/);
    expect(texts[0]?.blocked).toBeNull();
  });

  test('a light brought closer says how far apart the ends of the group then are', () => {
    const base = seen(demoShoot(), 'quartet', '18:00');
    const { sentence } = fixText(
      {
        changes: [{ kind: 'distance', lightIds: ['key'], distanceM: 1.85, closer: true }],
        inHandStops: 0,
        leastInHandStops: 0,
      },
      { base, kit: demoKit() },
    );
    // Four faces 0.7 m apart, key at 1.85 m, 0.65 m above, 35° to the right: distances to the outer
    // faces by Pythagoras, source 0.18 m across. Beyond half of its 65° the reflector loses a stop per
    // 65°/8 (common practice).
    const level = Math.sqrt(1.85 ** 2 - 0.65 ** 2);
    const right = level * Math.sin((35 * Math.PI) / 180);
    const toward = level * Math.cos((35 * Math.PI) / 180);
    const square = (faceM: number): number =>
      (right - faceM) ** 2 + toward ** 2 + 0.65 ** 2 + 0.09 ** 2;
    const offAxisDeg = (faceM: number): number => {
      const along = (right - faceM) * right + toward ** 2 + 0.65 ** 2;
      const away = Math.hypot(right - faceM, toward, 0.65);
      return (Math.acos(along / (1.85 * away)) * 180) / Math.PI;
    };
    const faces = [-1.05, -0.35, 0.35, 1.05].map(
      (faceM) => -Math.log2(square(faceM)) - Math.max(0, offAxisDeg(faceM) - 32.5) / (65 / 8),
    );
    const spread = Math.max(...faces) - Math.min(...faces);
    expect(sentence).toBe(
      `Closer: key at 1.85 m (ends of the group differ by ${spread.toFixed(1)})`,
    );
  });

  test('a polariser is a range, not a promise', () => {
    const base = seen(demoShoot(), 'quartet', '18:00');
    const fix = {
      changes: [{ kind: 'polariser', upToStops: 1.2 } as const],
      inHandStops: 0.4,
      leastInHandStops: -0.8,
    };
    expect(fixText(fix, { base, kit: demoKit() })).toMatchObject({
      sentence: 'Polariser: darkens this sky by 0 to 1.2 more than it takes from the flash',
      inHand: 'short by 0.8 to 0.4 in hand',
    });
  });
});

describe('words of a recipe', () => {
  test('ND is written in stops with its density, then what is on the ring', () => {
    const { filters } = demoKit();
    const nd = filters['nd-2'];
    if (nd === undefined) throw new Error('the demo kit changed its ids');
    expect(filterText({ ...nd, engraving: 'ND4' })).toBe('ND 2 stops (0.6), engraved ND4');
    expect(filterText({ ...nd, engraving: '' })).toBe('ND 2 stops (0.6)');
  });

  test('power is written in the head’s own scale with the stops below full', () => {
    const head = demoKit().heads['head-600'];
    if (head === undefined) throw new Error('the demo kit changed its ids');
    expect(powerText(-0.8, { ...head, scale: 'fraction' })).toEqual({
      dial: '1/2 + 0.2',
      below: '0.8 below full',
    });
    expect(powerText(-1, { ...head, scale: 'watt-seconds', energyWs: 600 }).dial).toBe('300 Ws');
  });

  test('a face one stop brighter meters one stop more', () => {
    expect(meterText(8)).toBe('f/8');
    expect(meterText(8, 1)).toBe('f/11');
    expect(meterText(8, -0.5)).toBe('f/5.6 + 0.5');
  });

  test('a head’s figure names its origin, and watt-seconds are called a guess', () => {
    expect(originText('metered', 0.2)).toBe('metered ± 0.2');
    expect(originText('guide-number', 0.9)).toBe('guide number ± 0.9');
    expect(originText('watt-seconds', 1.1)).toBe('watt-seconds, a guess ± 1.1');
  });

  test('under and over are words, not signs', () => {
    expect(underText(-2.04)).toBe('2.0 under');
    expect(underText(0.4)).toBe('0.4 over');
    expect(underText(-Infinity)).toBe('no light at all');
  });

  test('a patch is described from the picture’s centre', () => {
    expect(
      patchText({ xFraction: -0.25, yFraction: 0.03, widthFraction: 0.1, heightFraction: 0.2 }),
    ).toBe('10 × 20 % of the picture, 25 % left of the centre, 3 % above it');
  });

  test('only the dials that turn are named', () => {
    const view = seen(demoShoot(), 'quartet', '20:00');
    if (!view.answer.ok) throw new Error('expected a recipe');
    const { recipe } = view.answer.value;
    expect(changeWords(recipe, { ...recipe, shutterS: 1 / 128 }, view, undefined)).toBe('1/125');
    expect(changeWords(recipe, recipe, view, undefined)).toBe('');
  });
});

describe('the size of a source', () => {
  test('sharp to infinity is said in words', () => {
    expect(sharpText({ nearM: 1.41, farM: Infinity })).toBe('1.41 m to infinity');
    expect(sharpText({ nearM: 3.05, farM: 16 })).toBe('3.05 to 16 m');
  });
});

const idsAt = (shoot: Shoot, setupId: string, clock: string): readonly string[] =>
  notesOf(seen(shoot, setupId, clock), demoKit()).map(({ id }) => id);

describe('notes', () => {
  test('the sun in the frame brings a caution for eyes, and goes with the sun', () => {
    expect(idsAt(demoShoot(), 'quartet', '20:00')).toContain('sun-in-frame');
    expect(idsAt(demoShoot(), 'quartet', '20:40')).not.toContain('sun-in-frame');
  });

  test('a row whose ends differ more than allowed is named, and not when it is allowed', () => {
    expect(idsAt(demoShoot(), 'quartet', '20:00')).toContain('spread-key');
    expect(idsAt(changed('quartet', { spreadLimitStops: 2 }), 'quartet', '20:00')).not.toContain(
      'spread-key',
    );
  });

  test('the twilight shape is named an approximation after sunset and not at noon', () => {
    expect(idsAt(demoShoot(), 'quartet', '20:40')).toContain('twilight');
    expect(idsAt(demoShoot(), 'cello', '13:00')).not.toContain('twilight');
  });

  test('a heavy overcast names the other standard sky', () => {
    const shoot = { ...demoShoot(), condition: 'heavy-overcast' as const };
    expect(idsAt(shoot, 'viola', '18:20')).toContain('overcast-type');
    expect(idsAt(demoShoot(), 'viola', '18:20')).not.toContain('overcast-type');
  });

  test('a focal length that the lens does not have is named', () => {
    expect(idsAt(changed('quartet', { lensId: 'lens-85' }), 'quartet', '20:00')).toContain(
      'focal-length',
    );
  });
});
