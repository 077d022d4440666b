import type { ReactNode } from 'react';
import { useEffect, useState } from 'react';
import type { GeoPoint } from '../../core/place/geo-point.ts';
import type { Atlas } from '../state/atlas.ts';
import { compassText, declinationText } from './declination-text.ts';

type Answer = Awaited<ReturnType<Atlas['declination']>>;

/** Magnetic declination at a place, on the date that counts. */
export type DeclinationAt = (point: GeoPoint) => Promise<Answer>;

type CompassLineProps = {
  readonly point: GeoPoint;
  /** From true north. */
  readonly bearingDeg: number;
  readonly declinationAt: DeclinationAt;
  readonly figure: string;
};

/** A bearing as a compass shows it, or why none is given. */
export function CompassLine({
  point,
  bearingDeg,
  declinationAt,
  figure,
}: CompassLineProps): ReactNode {
  const declination = useDeclination(point, declinationAt);
  if (declination === null) return null;
  return (
    <p className="quiet" data-figure={figure}>
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

/** null until it is there; the model is fetched when first wanted. */
function useDeclination(
  { latitudeDeg, longitudeDeg, elevationM = 0 }: GeoPoint,
  declinationAt: DeclinationAt,
): Answer | null {
  const [answer, setAnswer] = useState<Answer | null>(null);
  useEffect(
    function askModel() {
      let current = true;
      const take = (found: Answer): void => {
        if (current) setAnswer(found);
      };
      declinationAt({ latitudeDeg, longitudeDeg, elevationM }).then(take, () =>
        take({ ok: false, problem: 'the magnetic model is not on this device' }),
      );
      return function forget() {
        current = false;
      };
    },
    [declinationAt, latitudeDeg, longitudeDeg, elevationM],
  );
  return answer;
}
