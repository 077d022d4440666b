import type { BatteryNeed } from '../../core/plan/batteries-for-day.ts';
import type { Charges, HeadCharges } from '../../core/plan/head-charges.ts';

/** '1.4 charges (0.9 to 2.1)', 'less than a tenth of a charge' */
const chargesText = ({ middle, least, most }: Charges): string =>
  most < A_TENTH
    ? 'less than a tenth of a charge'
    : `${amount(middle)} charges (${amount(least)} to ${amount(most)})`;

const A_TENTH = 0.095;

const amount = (charges: number): string =>
  charges < A_TENTH ? Math.max(0.01, charges).toFixed(2) : charges.toFixed(1);

/** 'Battery head, 600 Ws: 1.4 charges (0.9 to 2.1)' */
export function headChargesText({ head, units, atFullPower }: HeadCharges): string {
  const full = atFullPower === 0 ? '' : ', lights without a recipe counted at full power';
  return `${head.name}: ${units.map(chargesText).join(' and ')}${full}`;
}

/** '2 batteries, you own 1: short by 1, 3 at the far end' */
export function batteryCountText(need: BatteryNeed): string {
  const { needed, neededAtMost, owned, shortBy } = need;
  const far = neededAtMost > needed ? `, ${neededAtMost} at the far end` : '';
  const count = `${needed} ${needed === 1 ? 'battery' : 'batteries'}`;
  if (owned === null) return `${count}${far}; which battery it takes is not in the kit`;
  return `${count}, you own ${owned}${shortBy === 0 ? '' : `: short by ${shortBy}`}${far}`;
}

export const batteryNeedText = (need: BatteryNeed): string =>
  `${need.heads.map(headChargesText).join('; ')}: ${batteryCountText(need)}`;
