import type { SetupView } from '../../../core/plan/setup-view.ts';
import type { Setup } from '../../../core/plan/setup-schema.ts';
import type { Spot } from '../../../core/plan/shoot.ts';

/** A setup whose fields are shown; the view is missing where nothing can be asked. */
export type AskedProps = {
  readonly setupId: string;
  readonly setup: Setup;
  readonly spot: Spot;
  readonly view: SetupView | null;
};
