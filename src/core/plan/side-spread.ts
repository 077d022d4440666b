import { flashFNumberSquared } from '../strobe/guide-number.ts';
import type { Row } from './face-places.ts';
import { spreadOfLights, type FaceSpread } from './row-of-faces.ts';
import type { SetupSource } from './setup-source.ts';

/** Lights that add up on the faces, and how they together fall off over them. */
export type SideSpread = {
  readonly role: 'key' | 'fill';
  readonly lightIds: readonly string[];
  readonly faces: FaceSpread;
};

/**
 * The key's side and the fill's over the faces. Lights of one side burn at equal power unless it
 * is pinned, so each has the share that it has at full power.
 */
export const sideSpreads = (sources: readonly SetupSource[], row: Row): readonly SideSpread[] =>
  (['key', 'fill'] as const).flatMap((role) => {
    const side = sources.filter(({ light }) => light.role === role);
    if (side.length === 0) return [];
    const lights = side.map(({ stand, light, output }) => ({
      stand,
      share:
        flashFNumberSquared({ ...output, distanceM: light.distanceM, heads: light.headCount }) *
        2 ** (light.pinnedPowerStops ?? 0),
    }));
    return [
      { role, lightIds: side.map(({ lightId }) => lightId), faces: spreadOfLights(lights, row) },
    ];
  });

/** What is not shown of a difference does not count. */
const UNSEEN_STOPS = 0.005;

/** The most by which faces may differ. */
export const mostSpreadStops = ({
  spreadLimitStops,
}: {
  readonly spreadLimitStops: number;
}): number => spreadLimitStops + UNSEEN_STOPS;

export const isTooUneven = (
  { faces }: Pick<SideSpread, 'faces'>,
  limit: { readonly spreadLimitStops: number },
): boolean => faces.spreadStops > mostSpreadStops(limit);
