import type { Fix, RecipeInput } from './recipe.ts';

/**
 * How much a fix asks of the photographer, for putting the lightest first: about one for a few
 * steps with a stand, more for each stop of the look given up, most for gear that is not in the
 * car. A judgement of common practice, not a measurement. [lightingPractice]
 */
export const fixWeight = (input: RecipeInput, fix: Fix): number => {
  switch (fix.kind) {
    case 'distance': {
      const nowM = input.lights[fix.lights?.[0] ?? -1]?.distanceM ?? fix.value;
      return 1 + Math.abs(2 * Math.log2(fix.value / nowM));
    }
    case 'hold':
      return 1 + 2 * Math.abs(fix.value - input.hold.stops);
    case 'unlit-under':
      return 1 + 2 * (input.unlitUnderStops - fix.value);
    case 'slower-shutter':
      return 1 + Math.log2(fix.value / input.camera.slowestShutterS);
    case 'shade':
      return 2 + fix.value;
    case 'leave-out':
      return 2;
    case 'nd':
      return 3;
    case 'head-nd':
      return 2 + fix.value / 2;
    case 'second-head':
      return 3 * (fix.value - (input.lights[fix.lights?.[0] ?? -1]?.heads ?? 1));
    case 'sync-shutter':
      return 4 + Math.log2(input.camera.syncShutterS / fix.value);
    case 'unpin-shutter':
    case 'unpin-aperture':
    case 'unpin-iso':
    case 'unpin-nd':
    case 'unpin-power':
      return 0.5;
    case 'pair':
      return (fix.parts ?? []).reduce((sum, part) => sum + fixWeight(input, part), 0);
  }
};
