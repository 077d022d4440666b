import type { Head } from '../../core/plan/kit.ts';
import { formatPower } from '../../core/strobe/power-scale.ts';

/** On the head's own display, and the stops below full. */
export const powerText = (
  powerStops: number,
  head: Head,
): { readonly dial: string; readonly below: string } =>
  formatPower(powerStops, {
    kind: head.scale,
    stepStops: head.stepStops,
    minPowerStops: head.minPowerStops,
    fullPowerNumber: head.fullPowerNumber,
    ...(head.energyWs === null ? {} : { energyWs: head.energyWs }),
  });
