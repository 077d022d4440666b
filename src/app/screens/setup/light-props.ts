import type { SetupSource } from '../../../core/plan/setup-source.ts';
import type { Light } from '../../../core/plan/setup-schema.ts';
import type { Spot } from '../../../core/plan/shoot.ts';

/** A light whose fields are shown. */
export type LightProps = {
  readonly setupId: string;
  readonly lightId: string;
  readonly light: Light;
};

/** The same with what is known of it; no source where the kit lacks something it is made of. */
export type KnownLightProps = LightProps & {
  readonly spot: Spot;
  readonly source: SetupSource | null;
};
