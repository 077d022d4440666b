import { describe, expect, test } from 'vitest';

import { editLight, editSetup, together, type Edit } from '../../../src/core/plan/edits.ts';
import { frameScene } from '../../../src/core/plan/frame-scene.ts';
import { predictedFrame } from '../../../src/core/plan/predicted-frame.ts';
import type { Shoot } from '../../../src/core/plan/shoot.ts';
import type { SetupView, WorkingSetup } from '../../../src/core/plan/setup-view.ts';
import { projection } from '../../../src/core/sky/framing.ts';
import { demoMinute, viewOfMinute } from '../../support/demo-minute.ts';

const SIZE = { widthPx: 900, heightPx: 600 };

const working = (view: SetupView): WorkingSetup => {
  if (!view.answer.ok) throw new Error('the demo minute has a recipe');
  return view.answer.value;
};

/** One person, a cello player with skin like a grey card, at the pier. */
const greySkin = together(
  editSetup('quartet', { people: 1, darkestSkin: 0.18, lightestSkin: 0.18 }),
  editLight('quartet', 'fill', { stops: -2 }),
);

/** The lit skin of one person under other settings. */
const keyFace = (...edits: readonly Edit<Shoot>[]): readonly [number, number, number] => {
  // A gel costs a stop: less is held.
  const held = together(greySkin, editSetup('quartet', { holdStops: 0 }), ...edits);
  const seen = viewOfMinute(demoMinute('quartet', '20:00', 'broken-cloud', held));
  return frameScene(seen, working(seen), SIZE).figures[0]?.litSkin ?? [NaN, NaN, NaN];
};

describe('the setup as it will be painted', () => {
  const view = viewOfMinute(demoMinute('quartet', '20:00', 'broken-cloud', greySkin));
  const scene = frameScene(view, working(view), SIZE);
  const figure = scene.figures[0];

  test('a face of 18 % is as bright as the card: mid-grey at the key’s stops, neutral under 5600 K', () => {
    const { keyStops } = working(view).recipe;
    const [red, green, blue] = figure?.litSkin ?? [NaN, NaN, NaN];
    // Luminance of linear sRGB; the flash is 5600 K like the white balance, the ambient adds a percent.
    const luminance = 0.2126 * red + 0.7152 * green + 0.0722 * blue;
    expect(luminance).toBeCloseTo(0.18 * 2 ** keyStops, 2);
    expect(Math.abs(red - blue)).toBeLessThan(0.02);
  });

  test('its other half lies at the fill', () => {
    const { fillStops } = working(view).recipe;
    expect(figure?.darkSkin[1]).toBeCloseTo(0.18 * 2 ** (fillStops ?? NaN), 2);
  });

  test('painted, the lit cheek reads the tone that the tone scale shows', () => {
    const frame = predictedFrame({ ...scene, figures: figure === undefined ? [] : [figure] });
    const face = projection(scene.framing).toPicture({
      azimuthDeg: scene.framing.bearingDeg + 0.45,
      altitudeDeg:
        (Math.atan((1.65 - scene.cameraHeightM) / view.framing.cameraDistanceM) * 180) / Math.PI,
    });
    const x = Math.floor((0.5 + (face?.xFraction ?? NaN)) * SIZE.widthPx);
    const y = Math.floor((0.5 - (face?.yFraction ?? NaN)) * SIZE.heightPx);
    const green = (frame.rgba[4 * (y * SIZE.widthPx + x) + 1] ?? NaN) / 255;
    const linear = green <= 0.04045 ? green / 12.92 : ((green + 0.055) / 1.055) ** 2.4;
    // Half a level of 255 at mid-grey is 0.01 stop; the flash's white against the setting's 0.02.
    expect(Math.abs(Math.log2(linear / 0.18) - working(view).recipe.keyStops)).toBeLessThan(0.05);
  });

  test('a tungsten white balance turns the same face blue, a CTO on the key brings it back', () => {
    const tungsten = editSetup('quartet', { whiteBalanceKelvin: 2900 });
    const [red, , blue] = keyFace(tungsten);
    expect(blue).toBeGreaterThan(1.5 * red);
    const gelled = keyFace(
      tungsten,
      editLight('quartet', 'key', { gelId: 'cto-full' }),
      editLight('quartet', 'fill', { gelId: 'cto-full' }),
    );
    expect(Math.abs(gelled[0] - gelled[2])).toBeLessThan(0.2 * gelled[1]);
  });

  test('four people stand from the darkest skin to the lightest', () => {
    const four = viewOfMinute(demoMinute('quartet', '20:00', 'broken-cloud'));
    const { figures } = frameScene(four, working(four), SIZE);
    expect(figures).toHaveLength(4);
    const ratio = (figures[3]?.litSkin[1] ?? NaN) / (figures[0]?.litSkin[1] ?? NaN);
    // 0.45 / 0.12 by the skins, and the row's own falloff between its ends.
    expect(ratio).toBeGreaterThan(3);
  });
});
