import { tanDeg } from '../../../core/units/angle.ts';
import { metres } from '../../ui/figure-text.ts';

export const BEAM_SHOWN_AT_M = 2;
/** Wider than this a circle on a wall says nothing any more. */
const WIDEST_SHOWN_DEG = 150;

/** How wide the even part of a beam falls on a wall: '2.5 m'. */
export function acrossText(beamDeg: number | null): string {
  if (beamDeg === null) return 'not known';
  if (beamDeg > WIDEST_SHOWN_DEG) return 'all round';
  return metres(2 * BEAM_SHOWN_AT_M * tanDeg(beamDeg / 2));
}
