import { useDeferredValue, useMemo, useState } from 'react';

import { inOrder } from '../../../core/plan/order-key.ts';
import { projectedFraming } from '../../../core/plan/picture-geometry.ts';
import type { Shoot } from '../../../core/plan/shoot.ts';
import { horizontalFieldDeg } from '../../../core/sky/framing.ts';
import type { MapSpot } from '../../map/map-spot.ts';
import { ringKeeper, ringRange, type EvRange } from './spot-rings.ts';

export type MapSpots = {
  readonly spots: readonly MapSpot[];
  readonly ringRangeEv: EvRange;
  /** The minute the rings stand at; during a drag a little behind the cursor. */
  readonly ringsAtMs: number;
};

/** The spots as the map draws them. */
export function useMapSpots(shoot: Shoot, minuteMs: number): MapSpots {
  const ringsAtMs = useDeferredValue(minuteMs);
  const [ringOf] = useState(ringKeeper);
  const { spots: all, condition } = shoot;
  const spots = useMemo(
    () =>
      inOrder(all).map(([id, spot]): MapSpot => ({
        id,
        name: spot.name,
        point: { latitudeDeg: spot.latitudeDeg, longitudeDeg: spot.longitudeDeg },
        bearingDeg: spot.framing.bearingDeg,
        horizontalFovDeg: horizontalFieldDeg(projectedFraming(spot.framing)),
        cameraDistanceM: spot.framing.cameraDistanceM,
        ringEv: ringOf(spot, condition, ringsAtMs),
      })),
    [all, condition, ringsAtMs, ringOf],
  );
  const { minEv, maxEv } = ringRange(spots.map(({ ringEv }) => ringEv ?? []));
  const ringRangeEv = useMemo(() => ({ minEv, maxEv }), [minEv, maxEv]);
  return { spots, ringRangeEv, ringsAtMs };
}
