import type { Light } from '../../../core/plan/setup-schema.ts';

/** A light whose fields are shown. */
export type LightProps = {
  readonly setupId: string;
  readonly lightId: string;
  readonly light: Light;
};
