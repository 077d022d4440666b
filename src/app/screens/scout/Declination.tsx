import { useCallback, type ReactNode } from 'react';

import type { GeoPoint } from '../../../core/place/geo-point.ts';
import { CompassLine, type DeclinationAt } from '../../map/CompassLine.tsx';
import { useAtlas } from '../../state/atlas.ts';
import { useShoot } from '../../state/documents.tsx';

type DeclinationProps = {
  readonly spot: GeoPoint;
  /** From true north. */
  readonly bearingDeg: number;
};

/** The bearing as a compass shows it at the spot on the shoot's date. */
export const Declination = ({ spot, bearingDeg }: DeclinationProps): ReactNode => (
  <CompassLine
    point={spot}
    bearingDeg={bearingDeg}
    declinationAt={useDeclinationAt()}
    figure="compass-bearing"
  />
);

/** Magnetic declination anywhere on the shoot's date. */
export function useDeclinationAt(): DeclinationAt {
  const { declination } = useAtlas();
  const { date } = useShoot();
  return useCallback((point) => declination(point, date), [declination, date]);
}
