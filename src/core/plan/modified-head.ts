import {
  faceAreaM2,
  guideNumberFromWattSeconds,
  headFromGuideNumber,
  headFromReading,
  headFromWattSeconds,
  type HeadFigure,
} from '../strobe/head.ts';
import type { Result } from '../units/result.ts';
import type { Gel, Head, Modifier } from './kit.ts';
import type { Light } from './setup-schema.ts';

/** A head with its modifier on, as a light of a recipe takes it. */
export type ModifiedHead = HeadFigure;

type Parts = Pick<Light, 'diffuser' | 'baffle' | 'grid'>;

/** One row of a focusing modifier's own table. */
export type ModifierSetting = Modifier['settings'][string];

/**
 * What a head gives through a modifier: from the user's own reading with that modifier, else from
 * its guide number, else from its watt-seconds. A reading made with other parts on is corrected
 * by what they cost, which widens its spread.
 */
export function headWithModifier(chosen: {
  readonly head: Head;
  readonly modifier: Modifier;
  readonly modifierId: string;
  readonly gel: Gel | null;
  /** On top of the first. */
  readonly secondGel?: Gel | null | undefined;
  readonly setting?: ModifierSetting | null | undefined;
  readonly light: Parts;
}): ModifiedHead {
  const { head, modifier, modifierId, gel, secondGel, setting, light } = chosen;
  const area = faceAreaM2(modifier);
  const gelStops = (gel?.stops ?? 0) + (secondGel?.stops ?? 0);
  const settingStops = setting?.stops ?? 0;
  const reading = head.readings[modifierId];
  if (reading !== undefined) {
    const read = headFromReading({ ...reading, faceAreaM2: area });
    if (read.ok) {
      // Read as the modifier's figures stand: none of its settings counts as taken.
      const changedStops =
        partsStops(modifier, light) - partsStops(modifier, reading) + settingStops;
      return {
        ...read.value,
        lossStops: changedStops + gelStops,
        spreadStops: Math.hypot(read.value.spreadStops, changedStops === 0 ? 0 : PARTS_SPREAD),
      };
    }
  }
  const loss = {
    lossStops: modifier.lossStops + partsStops(modifier, light) + settingStops + gelStops,
    lossSpreadStops: modifier.lossSpreadStops,
    faceAreaM2: area,
  };
  const figure =
    head.guideNumberM === null
      ? headFromWattSeconds(head.energyWs ?? LEAST_ENERGY_WS, loss)
      : headFromGuideNumber({ guideNumberM: head.guideNumberM, iso: 100 }, loss);
  return valueOr(figure, {
    guideNumberM: guideNumberFromWattSeconds(LEAST_ENERGY_WS),
    lossStops: loss.lossStops,
    sourceDiameterM: 0,
    spreadStops: GUESS_SPREAD,
    origin: 'watt-seconds',
  });
}

/** Losses of diffusers and grids in circulation differ by half a stop, common practice. [lightingPractice] */
const PARTS_SPREAD = 0.5;
const GUESS_SPREAD = 2;
/** A head without any figure of its own counts as the smallest flash there is. */
const LEAST_ENERGY_WS = 10;

/** What the removable parts that are on cost together. */
export const partsStops = (modifier: Modifier, on: Parts): number =>
  (on.diffuser ? (modifier.diffuserStops ?? 0) : 0) +
  (on.baffle ? (modifier.baffleStops ?? 0) : 0) +
  (on.grid ? (modifier.gridStops ?? 0) : 0);

const valueOr = <Value>(result: Result<Value, unknown>, other: Value): Value =>
  result.ok ? result.value : other;
