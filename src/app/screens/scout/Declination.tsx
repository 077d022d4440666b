import { useCallback, type ReactNode } from 'react';

import type { GeoPoint } from '../../../core/place/geo-point.ts';
import { CompassLine, type DeclinationAt } from '../../map/CompassLine.tsx';
import { useAtlas } from '../../state/atlas.ts';
import { useShoot } from '../../state/documents.tsx';
import { useView } from '../../state/view.ts';

type DeclinationProps = {
  readonly spot: GeoPoint;
  /** From true north. */
  readonly bearingDeg: number;
};

/**
 * The bearing as a compass shows it at the spot on the shoot's date; the model is not fetched before
 * the first screen stands.
 */
export function Declination({ spot, bearingDeg }: DeclinationProps): ReactNode {
  const declinationAt = useDeclinationAt();
  const settled = useView((view) => view.settled);
  return (
    settled && (
      <CompassLine
        point={spot}
        bearingDeg={bearingDeg}
        declinationAt={declinationAt}
        figure="compass-bearing"
      />
    )
  );
}

/** Magnetic declination anywhere on the shoot's date. */
export function useDeclinationAt(): DeclinationAt {
  const { declination } = useAtlas();
  const { date } = useShoot();
  return useCallback((point) => declination(point, date), [declination, date]);
}
