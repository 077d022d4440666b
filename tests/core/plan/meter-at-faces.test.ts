import { expect, test } from 'vitest';

import { meterAtFaces } from '../../../src/core/plan/meter-at-faces.ts';
import { defined } from '../../support/defined.ts';
import { demoMinute, viewOfMinute } from '../../support/demo-minute.ts';

const view = viewOfMinute(demoMinute('quartet', '20:30', 'clear'));
if (!view.answer.ok) throw new Error('expected a recipe');
const { recipe } = view.answer.value;

test('the total at either end adds key, fill and ambient as light, by hand from distances', () => {
  // Both lights of the demo reach the ends inside their even beam; a disc of radius r: d² + r².
  const faces = [-1.05, -0.35, 0.35, 1.05];
  const totals = faces.map((faceM) => {
    let sum = 2 ** recipe.unlitStops;
    view.sources.forEach(({ light, output }, place) => {
      const upM = light.heightM - view.setup.faceHeightM;
      const level = Math.sqrt(light.distanceM ** 2 - upM ** 2);
      const turn = (light.angleDeg * Math.PI) / 180;
      const radius = (output.sourceDiameterM / 2) ** 2;
      const square =
        (level * Math.sin(turn) - faceM) ** 2 + (level * Math.cos(turn)) ** 2 + upM ** 2 + radius;
      sum +=
        (2 ** defined(recipe.lights[place]).levelStops * (light.distanceM ** 2 + radius)) / square;
    });
    return Math.log2(sum) - recipe.keyStops;
  });
  const found = defined(meterAtFaces(view, recipe));
  expect(found.best.stops).toBeCloseTo(Math.max(...totals), 6);
  expect(found.least.stops).toBeCloseTo(Math.min(...totals), 6);
  expect([found.best.inRow, found.least.inRow]).toEqual([3, 0]);
});

test('ambient and fill soften what the key alone differs by', () => {
  const key = defined(view.sources[0]);
  const { best, least } = defined(meterAtFaces(view, recipe));
  expect(best.stops - least.stops).toBeLessThan(key.faces.spreadStops);
});
