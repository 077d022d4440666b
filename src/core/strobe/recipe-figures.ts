import { fNumberFromStops } from '../exposure/aperture-scale.ts';
import { isoFromStops } from '../exposure/iso-scale.ts';
import { shutterFromStops } from '../exposure/shutter-scale.ts';
import { stopsFromRatio } from '../units/stops.ts';
import { filteredReferences } from './hold-reference.ts';
import type { Judgement } from './judge-recipe.ts';
import type { LightSide } from './light-sides.ts';
import { ambientRatioAt, type RecipeCase } from './recipe-case.ts';
import type { LitLight, Recipe } from './recipe.ts';
import type { SettledDials } from './settle-dials.ts';
import { isHighSpeedSync } from './sync.ts';

/** Everything a recipe says, from the dials that were settled. */
export const recipeFigures = (
  question: RecipeCase,
  judgement: Judgement,
  dials: SettledDials,
): Recipe => {
  const { input, sides } = question;
  const { levels, powerStops } = dials.heads;
  const filterStops = dials.stack.stops + (input.otherFilterStops ?? 0);
  const cameraEv = dials.apertureStops - dials.shutterStops - dials.isoStops + filterStops;
  const ambient = ambientRatioAt(question, cameraEv);
  const fill = sideLevel(sides.fill, levels);
  const onKey = fill + sideLevel(sides.key, levels);
  const shutterS = shutterFromStops(dials.shutterStops);
  /** f-number a meter shows for a ratio to mid-grey: a lens filter is never in its reading. */
  const meterFNumber = (ratio: number): number =>
    fNumberFromStops(dials.apertureStops + filterStops + stopsFromRatio(ratio));
  const { patchEv: ownPatchEv, meanEv } = filteredReferences(input);
  const patchEv = ownPatchEv ?? meanEv;
  const lights = input.lights.map((light, index): LitLight => {
    const level = levels[index] ?? 0;
    return {
      role: light.role,
      powerStops: powerStops[index] ?? 0,
      levelStops: stopsFromRatio(level),
      flashMeterFNumber: meterFNumber(level),
      totalMeterFNumber: meterFNumber(level + ambient),
    };
  });
  return {
    shutterS,
    fNumber: fNumberFromStops(dials.apertureStops),
    iso: isoFromStops(dials.isoStops),
    ndStops: dials.stack.stops,
    ndFilters: dials.stack.filters,
    highSpeedSync: isHighSpeedSync({ shutterS, syncShutterS: input.camera.syncShutterS }),
    lights,
    meterFNumber: meterFNumber(onKey + ambient),
    flashShare: onKey / (onKey + ambient),
    cameraEv,
    skyStops: (input.hold.under === 'frame' ? meanEv : patchEv) - cameraEv,
    patchStops: patchEv - cameraEv,
    frameStops: meanEv - cameraEv,
    incidentStops: input.incidentEv - cameraEv,
    keyStops: stopsFromRatio(onKey + ambient),
    fillStops: sides.fill === null ? null : stopsFromRatio(fill + ambient),
    unlitStops: stopsFromRatio(ambient),
    unlitOutStops: (input.ambientOutEv ?? input.ambientOnSubjectEv) - cameraEv,
    inHandStops: judgement.inHandStops,
    reachEv: judgement.reachEv,
    limitingRole: judgement.limitingRole,
  };
};

const sideLevel = (side: LightSide | null, levels: readonly number[]): number => {
  let level = 0;
  for (const index of side?.lights ?? []) level += levels[index] ?? 0;
  return level;
};
