import type { RecipeInput, RecipeLight } from './recipe.ts';

/** What is wrong with the figures a recipe is asked from: found and expected; none when usable. */
export const checkRecipeInput = (input: RecipeInput): readonly string[] => {
  const sentences: string[] = [];
  const { camera, lens, sky } = input;
  if (sky.patchEv !== null) expectNumber(sentences, 'sky.patchEv', sky.patchEv);
  expectNumber(sentences, 'sky.meanEv', sky.meanEv);
  if (input.skyFilterStops !== undefined) {
    expectNumber(sentences, 'skyFilterStops.patch', input.skyFilterStops.patch);
    expectNumber(sentences, 'skyFilterStops.frame', input.skyFilterStops.frame);
  }
  expectNumber(sentences, 'hold.stops', input.hold.stops);
  expectNumber(sentences, 'unlitUnderStops', input.unlitUnderStops);
  if (input.hold.under === 'incident') expectNumber(sentences, 'incidentEv', input.incidentEv);
  expectAmbient(sentences, 'ambientOnSubjectEv', input.ambientOnSubjectEv);
  if (input.ambientOutEv !== undefined)
    expectAmbient(sentences, 'ambientOutEv', input.ambientOutEv);
  expectPositive(sentences, 'camera.syncShutterS', camera.syncShutterS);
  expectAtLeast(
    sentences,
    'camera.slowestShutterS',
    camera.slowestShutterS,
    (camera.fastestShutterS ?? camera.syncShutterS) * 0.999,
  );
  expectPositive(sentences, 'camera.baseIso', camera.baseIso);
  expectAtLeast(sentences, 'camera.maxIso', camera.maxIso, camera.baseIso);
  expectPositive(sentences, 'lens.minFNumber', lens.minFNumber);
  expectAtLeast(sentences, 'lens.maxFNumber', lens.maxFNumber, lens.minFNumber);
  for (const stops of input.ndStops) expectAtLeast(sentences, 'ndStops', stops, 0);
  if (input.wish !== undefined) expectPositive(sentences, 'wish.fNumber', input.wish.fNumber);
  if (input.lights.length === 0) sentences.push('lights: expected at least one, found none');
  for (const light of input.lights) checkLight(sentences, light);
  checkPins(sentences, input);
  return sentences;
};

const checkLight = (sentences: string[], light: RecipeLight): void => {
  expectNumber(sentences, `stops of the ${light.role}`, light.stops);
  expectNumber(sentences, `lossStops of the ${light.role}`, light.lossStops);
  expectPositive(sentences, `guideNumberM of the ${light.role}`, light.guideNumberM);
  expectPositive(sentences, `distanceM of the ${light.role}`, light.distanceM);
  expectPositive(sentences, `stepStops of the ${light.role}`, light.stepStops);
  expectAtLeast(sentences, `heads of the ${light.role}`, light.heads ?? 1, 1);
  expectAtLeast(sentences, `sourceDiameterM of the ${light.role}`, light.sourceDiameterM ?? 0, 0);
  expectAtLeast(sentences, `flashDurationS of the ${light.role}`, light.flashDurationS ?? 0, 0);
  if (light.flashDurationLowestS !== undefined)
    expectPositive(
      sentences,
      `flashDurationLowestS of the ${light.role}`,
      light.flashDurationLowestS,
    );
  expectAtLeast(
    sentences,
    `full power of the ${light.role}, −minPowerStops,`,
    -light.minPowerStops,
    0,
  );
};

const checkPins = (sentences: string[], { pins, lights }: RecipeInput): void => {
  if (pins === undefined) return;
  if (pins.shutterS !== undefined) expectPositive(sentences, 'pins.shutterS', pins.shutterS);
  if (pins.fNumber !== undefined) expectPositive(sentences, 'pins.fNumber', pins.fNumber);
  if (pins.iso !== undefined) expectPositive(sentences, 'pins.iso', pins.iso);
  if (pins.ndStops !== undefined) expectAtLeast(sentences, 'pins.ndStops', pins.ndStops, 0);
  pins.powerStops?.forEach((power, index) => {
    const light = lights[index];
    if (power === null || light === undefined) return;
    if (power >= light.minPowerStops - 1e-9 && power <= 1e-9) return;
    sentences.push(
      `pins.powerStops of the ${light.role}: expected ${light.minPowerStops} to 0, found ${power}`,
    );
  });
};

const expectNumber = (sentences: string[], name: string, value: number): void => {
  if (!Number.isFinite(value)) sentences.push(`${name}: expected a number, found ${value}`);
};

const expectAmbient = (sentences: string[], name: string, value: number): void => {
  if (!(value < Number.POSITIVE_INFINITY))
    sentences.push(`${name}: expected an EV or −Infinity for no ambient, found ${value}`);
};

const expectPositive = (sentences: string[], name: string, value: number): void => {
  if (!(value > 0 && value < Number.POSITIVE_INFINITY))
    sentences.push(`${name}: expected more than 0, found ${value}`);
};

const expectAtLeast = (sentences: string[], name: string, value: number, least: number): void => {
  if (!(value >= least && value < Number.POSITIVE_INFINITY))
    sentences.push(`${name}: expected ${Number(least.toPrecision(4))} or more, found ${value}`);
};
