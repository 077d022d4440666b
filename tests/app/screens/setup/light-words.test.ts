import { produce } from 'immer';
import { describe, expect, test } from 'vitest';

import {
  bounceText,
  placeText,
  softnessText,
  tintText,
  windText,
} from '../../../../src/app/screens/setup/light-words.ts';
import { notesOf } from '../../../../src/app/screens/setup/notes.ts';
import { sharpRowsText } from '../../../../src/app/screens/setup/sharp-rows-text.ts';
import { facePlaces } from '../../../../src/core/plan/face-places.ts';
import { editKitItem, editLight, editSetup, type Edit } from '../../../../src/core/plan/edits.ts';
import type { Shoot } from '../../../../src/core/plan/shoot.ts';
import { defined } from '../../../support/defined.ts';
import { demoMinute, viewOfMinute } from '../../../support/demo-minute.ts';

const quartet = (...edits: readonly Edit<Shoot>[]): ReturnType<typeof demoMinute> =>
  demoMinute('quartet', '20:30', 'clear', ...edits);

const ids = (asked: ReturnType<typeof demoMinute>): readonly string[] =>
  notesOf(viewOfMinute(asked), asked.kit).map(({ id }) => id);

describe('where a face stands', () => {
  test('in a row of five', () => {
    expect(facePlaces({ people: 5, spacingM: 1, faceHeightM: 1.6 }).map(placeText)).toEqual([
      'left end',
      'second from the left',
      'the middle',
      'second from the right',
      'right end',
    ]);
  });

  test('in three rows', () => {
    const group = { people: 5, spacingM: 1, faceHeightM: 1.6, rows: 3, rowSpacingM: 1 };
    expect(facePlaces(group).map(placeText)).toEqual([
      'the middle, front row',
      'left end, second row',
      'right end, second row',
      'left end, back row',
      'right end, back row',
    ]);
  });
});

describe('a stand in the wind', () => {
  test('has no kilogram without its wind, and is never approved', () => {
    expect(windText({ kind: 'wind-not-known' })).not.toMatch(/\d/);
    expect(windText({ kind: 'no-stand' })).not.toMatch(/\d/);
    const ballast = windText({ kind: 'ballast', gustMS: 8, ballastKg: 8.2, sailAreaM2: 0.8 });
    // Rounded up: less is not at least that.
    expect(ballast).toBe(
      'at least 9 kg on the windward leg for gusts up to 8.0 m/s, estimate, not an approval',
    );
    expect(windText({ kind: 'ballast', gustMS: 3, ballastKg: 0, sailAreaM2: 0.1 })).toMatch(
      /up to 3\.0 m\/s, estimate, not an approval$/,
    );
    expect(windText({ kind: 'above-limit', gustMS: 9, maxGustMS: 8 })).toMatch(
      /limit is 8\.0 m\/s/,
    );
  });
});

test('a tint says mired and green, and leaves out what is not there', () => {
  const seen = { warmerMired: 34.4, greener: 0.2, isBeyondKelvin: false };
  expect(tintText(seen)).toBe('The surface tints skin: 34 mired warmer than the head’s own light.');
  expect(tintText({ ...seen, warmerMired: -12, greener: -6 })).toMatch(
    /12 mired bluer and 6 tint more magenta/,
  );
});

describe('a light', () => {
  test('a bare reflector of 18 cm at 4.2 m is 2.5° wide and hard', () => {
    // 2 atan(0.09/4.2).
    expect(softnessText(defined(viewOfMinute(quartet()).sources[0]))).toBe(
      'hard, 2.5° wide as the subject sees it',
    );
  });

  test('two heads on one small panel say so', () => {
    const bounce = {
      reflectance: 0.8,
      colour: '',
      headToSurfaceM: 1,
      incidenceDeg: 0,
      exitDeg: 0,
      panelSideM: 0.5,
    };
    const view = viewOfMinute(quartet(editLight('quartet', 'key', { bounce, headCount: 2 })));
    // Half a metre square at a metre: 4 asin(0.0625/1.0625) = 0.235 sr of the 0.983 sr of 65°.
    expect(bounceText(defined(view.sources[0]))).toMatch(
      /^\d\.\d stops under .* ± 0\.6, 2 heads on it; .* the panel catches 24 % of the beam$/,
    );
    expect(bounceText(defined(view.sources[1]))).toBeNull();
  });
});

describe('to know here', () => {
  test('gels that pass hardly anything', () => {
    const asked = quartet(
      editLight('quartet', 'key', { gelId: 'cto-full', secondGelId: 'cto-half' }),
    );
    expect(ids(asked)).not.toContain('gels-key');
    const kit = produce(asked.kit, editKitItem('gels', 'cto-half', { stops: 8 }));
    expect(ids({ ...asked, kit })).toContain('gels-key');
  });

  test('a stand in the picture whose light is not, and more stands than the car holds', () => {
    const high = { standId: 'stand-heavy', angleDeg: 0, distanceM: 3.2, heightM: 4.4 };
    const asked = quartet(
      editLight('quartet', 'key', high),
      editLight('quartet', 'fill', { standId: 'stand-heavy', angleDeg: 90 }),
    );
    expect(ids(asked)).toContain('pole-in-frame-key');
    expect(ids(asked)).not.toContain('in-frame-key');
    expect(ids(asked)).toContain('stands-stand-heavy');
    expect(ids(quartet())).not.toContain('pole-in-frame-key');
  });
});

test('rows that are not sharp name what would cover them', () => {
  const asked = quartet(
    editSetup('quartet', { rows: 3, people: 6, rowSpacingM: 2, wishFNumber: 2.8 }),
  );
  const near = produce(asked.shoot, (shoot) => {
    const setup = defined(shoot.setups.quartet);
    const { framing } = defined(shoot.spots.pier);
    setup.framing = { ...framing, focalLengthMm: 70, cameraDistanceM: 5 };
  });
  const minute = { ...asked, shoot: near };
  const view = viewOfMinute(minute);
  if (!view.answer.ok) throw new Error('expected a recipe');
  expect(sharpRowsText(minute, view, view.answer.value)).toMatch(
    /the last row at 9\.0 m is \d\.\d+ m behind it: f\/\d+ would cover it; focused at 6\.43 m f\/[\d.]+ covers both$/,
  );
});
