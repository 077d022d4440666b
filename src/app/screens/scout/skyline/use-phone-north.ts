import { useEffect, useState } from 'react';

import type { Spot } from '../../../../core/plan/shoot.ts';
import { civilDateOf } from '../../../../core/units/civil-time.ts';
import { useAtlas, type Atlas } from '../../../state/atlas.ts';
import { useServices } from '../../../state/services.ts';
import { tenths } from '../../../ui/figure-text.ts';

/** What is added to the phone's azimuths to count from true north; null where nothing says so yet. */
export type PhoneNorth = { readonly offsetDeg: number | null; readonly words: string };

type Answer = Awaited<ReturnType<Atlas['declination']>>;

/**
 * Where the phone's azimuths count from: north set by a known bearing, else magnetic north and
 * today's declination.
 */
export function usePhoneNorth(spot: Spot, setDeg: number | null, fromNorth: boolean): PhoneNorth {
  const declination = useDeclinationToday(spot);
  if (setDeg !== null) return { offsetDeg: setDeg, words: 'North is set by what you pointed at.' };
  if (!fromNorth)
    return {
      offsetDeg: null,
      words: 'This phone counts from wherever it lay, not from north: set its north first.',
    };
  if (declination === null)
    return { offsetDeg: 0, words: 'Magnetic north, as the phone gives it.' };
  if (!declination.ok)
    return {
      offsetDeg: 0,
      words: `Magnetic north, as the phone gives it; ${declination.problem}.`,
    };
  const { declinationDeg, model } = declination.value;
  const side = declinationDeg < 0 ? 'west' : 'east';
  return {
    offsetDeg: declinationDeg,
    words: `Magnetic north, turned to true by ${tenths(Math.abs(declinationDeg))}° ${side} (${model}). Iron close by turns it further: better set it by a known bearing.`,
  };
}

function useDeclinationToday({ latitudeDeg, longitudeDeg, elevationM, zone }: Spot): Answer | null {
  const { declination } = useAtlas();
  const { nowMs } = useServices();
  const [answer, setAnswer] = useState<Answer | null>(null);
  useEffect(
    function askModel() {
      let current = true;
      const take = (found: Answer): void => {
        if (current) setAnswer(found);
      };
      const today = civilDateOf(nowMs(), zone);
      declination({ latitudeDeg, longitudeDeg, elevationM }, today).then(take, () =>
        take({ ok: false, problem: 'the magnetic model is not on this device' }),
      );
      return () => {
        current = false;
      };
    },
    [declination, nowMs, latitudeDeg, longitudeDeg, elevationM, zone],
  );
  return answer;
}
