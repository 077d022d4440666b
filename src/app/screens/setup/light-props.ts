import type { Light } from '../../../core/plan/shoot.ts';

/** A light whose fields are shown. */
export type LightProps = {
  readonly setupId: string;
  readonly lightId: string;
  readonly light: Light;
};
