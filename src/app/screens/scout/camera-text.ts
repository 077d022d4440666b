import type { ShootFraming } from '../../../core/plan/spot-schema.ts';
import { bearingText } from '../../ui/figure-text.ts';

/** '300° WNW · 35 mm · tilt +6°' */
export const cameraText = (framing: ShootFraming): string =>
  `${bearingText(framing.bearingDeg)} · ${plain(framing.focalLengthMm)} mm · tilt ${tiltText(framing.tiltDeg)}`;

const tiltText = (tiltDeg: number): string =>
  `${tiltDeg > 0 ? '+' : ''}${plain(tiltDeg)}°`.replace('-', '−');

const plain = (value: number): string => String(Number(value.toFixed(1)));
