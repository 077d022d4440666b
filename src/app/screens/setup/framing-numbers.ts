import type { ShootFraming } from '../../../core/plan/spot-schema.ts';

type NumberKey = {
  [Key in keyof ShootFraming]: ShootFraming[Key] extends number ? Key : never;
}[keyof ShootFraming];

type FramingNumber = {
  readonly key: NumberKey;
  readonly id: string;
  readonly label: string;
  readonly unit: string;
  readonly min: number;
  readonly max: number;
  readonly step: number;
};

/** The numbers of a framing as they are typed. */
export const FRAMING_NUMBERS: readonly FramingNumber[] = [
  { key: 'bearingDeg', id: 'bearing', label: 'Faces', unit: '°', min: 0, max: 360, step: 1 },
  { key: 'tiltDeg', id: 'tilt', label: 'Tilt up', unit: '°', min: -89, max: 89, step: 1 },
  { key: 'focalLengthMm', id: 'focal-length', label: 'Focal length', unit: 'mm', min: 4, max: 2000, step: 1 },
  { key: 'cameraDistanceM', id: 'camera-distance', label: 'Camera to middle face', unit: 'm', min: 0.3, max: 500, step: 0.1 },
  { key: 'cameraHeightM', id: 'camera-height', label: 'Camera height', unit: 'm', min: 0.05, max: 50, step: 0.1 },
]; // prettier-ignore
