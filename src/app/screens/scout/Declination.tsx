import { useEffect, useState, type ReactNode } from 'react';

import type { GeoPoint } from '../../../core/place/geo-point.ts';
import { useAtlas, type Atlas } from '../../state/atlas.ts';
import { useShoot } from '../../state/documents.tsx';
import { compassText, declinationText } from '../../ui/declination-text.ts';

type DeclinationProps = {
  readonly spot: Pick<GeoPoint, 'latitudeDeg' | 'longitudeDeg'> & { readonly elevationM: number };
  /** From true north. */
  readonly bearingDeg: number;
};

/** The bearing as a compass shows it on the shoot's date. */
export function Declination({ spot, bearingDeg }: DeclinationProps): ReactNode {
  const declination = useDeclination(spot, useShoot().date);
  if (declination === null) return null;
  return (
    <p className="quiet" data-figure="compass-bearing">
      {declination.ok ? (
        <>
          <strong>{compassText(bearingDeg, declination.value)} on a compass</strong>,{' '}
          {declinationText(declination.value)}; iron close by turns the needle further
        </>
      ) : (
        declination.problem
      )}
    </p>
  );
}

type Answer = Awaited<ReturnType<Atlas['declination']>>;

/** null until it is there; the code of the model is fetched when first wanted. */
function useDeclination(
  { latitudeDeg, longitudeDeg, elevationM }: DeclinationProps['spot'],
  date: string,
): Answer | null {
  const { declination } = useAtlas();
  const [answer, setAnswer] = useState<Answer | null>(null);
  useEffect(
    function askModel() {
      let current = true;
      const take = (found: Answer): void => {
        if (current) setAnswer(found);
      };
      declination({ latitudeDeg, longitudeDeg, elevationM }, date).then(take, () =>
        take({ ok: false, problem: 'the magnetic model is not on this device' }),
      );
      return () => {
        current = false;
      };
    },
    [declination, latitudeDeg, longitudeDeg, elevationM, date],
  );
  return answer;
}
