import { useDeferredValue, useMemo, type ReactNode } from 'react';

import type { Spot } from '../../../../core/plan/shoot.ts';
import { clockTime } from '../../../../core/units/civil-time.ts';
import type { Standing } from '../../../state/standing.ts';
import { nearStanding } from './near-standing.ts';
import { spotShade, type SpotShade } from './spot-shade.ts';

export type SpotShadowProps = {
  readonly spot: Spot;
  readonly minuteMs: number;
  /** Civil date of the shoot, for the leaves. */
  readonly date: string;
  readonly standing: readonly Standing[];
};

/** Whether an obstacle's shadow lies on the spot at the minute, whose, and until when. */
export function SpotInShadow({ spot, minuteMs, date, standing }: SpotShadowProps): ReactNode {
  const atMs = useDeferredValue(minuteMs);
  const { latitudeDeg, longitudeDeg, elevationM } = spot;
  const place = useMemo(
    () => ({ latitudeDeg, longitudeDeg, elevationM }),
    [latitudeDeg, longitudeDeg, elevationM],
  );
  const near = useMemo(() => nearStanding(standing, place), [standing, place]);
  const shade = useMemo(
    () => spotShade({ place, minuteMs: atMs, date, near }),
    [place, atMs, date, near],
  );
  return <p data-figure="spot-in-shadow">{shadeText(shade, spot, atMs)}</p>;
}

export function shadeText(
  shade: SpotShade,
  spot: Pick<Spot, 'name' | 'zone'>,
  minuteMs: number,
): string {
  const clock = (ms: number): string => clockTime(ms, spot.zone);
  switch (shade.kind) {
    case 'sun-down':
      return `The sun is down at ${clock(minuteMs)}.`;
    case 'in-shadow':
      return `${spot.name} is in the shadow of ${shade.of} ${
        shade.untilMs === null ? 'until the sun sets' : `until ${clock(shade.untilMs)}`
      }.`;
    case 'in-sun':
      return shade.next === null
        ? `No obstacle takes the sun off ${spot.name} from ${clock(minuteMs)} to sunset.`
        : `No obstacle’s shadow lies on ${spot.name} at ${clock(minuteMs)}; that of ${shade.next.of} comes at ${clock(shade.next.fromMs)}.`;
  }
}
