import { useMemo, type ReactNode } from 'react';

import { setupsAt } from '../../../../core/plan/setup-light.ts';
import { formatCoordinates } from '../../../../core/place/format-coordinates.ts';
import type { Spot } from '../../../../core/plan/shoot.ts';
import { useShoot } from '../../../state/documents.tsx';
import { defaultMinuteMs } from '../scout-minute.ts';
import { siteLines } from '../site/site-lines.ts';
import { SkylineStrip } from '../SkylineStrip.tsx';
import { sunDay } from '../sun-day.ts';
import { sunLines } from '../light-sentences.ts';
import { useSpotLight } from '../use-spot-light.ts';
import { COMPARED, type ComparisonRow } from './comparison-row.ts';

type SideBySideProps = {
  readonly spotIds: readonly string[];
  readonly rows: readonly ComparisonRow[];
};

/** Two spots beside each other: their sky, their light on the date, their notes. */
export function SideBySide({ spotIds, rows }: SideBySideProps): ReactNode {
  const shoot = useShoot();
  return (
    <div className="side-by-side" data-side-by-side>
      {spotIds.map((spotId) => {
        const spot = shoot.spots[spotId];
        const row = rows.find((one) => one.spotId === spotId);
        return spot === undefined || row === undefined ? null : (
          <Side key={spotId} spotId={spotId} spot={spot} row={row} />
        );
      })}
    </div>
  );
}

type SideProps = { readonly spotId: string; readonly spot: Spot; readonly row: ComparisonRow };

function Side({ spotId, spot, row }: SideProps): ReactNode {
  const shoot = useShoot();
  const setup = setupsAt(shoot, spotId)[0]?.[1] ?? null;
  const minuteMs = defaultMinuteMs(shoot.date, spot, setup);
  const { scene, light } = useSpotLight(shoot, spot, setup, minuteMs);
  const sun = useMemo(() => sunDay(spot, shoot.date), [spot, shoot.date]);
  const seen = new Set(['first-sun', 'last-sun', 'walk-in', 'permission', 'shelter', 'parking']);
  return (
    <article aria-label={spot.name} data-side={spotId}>
      <h3>{spot.name}</h3>
      <p className="quiet">{formatCoordinates(spot)}</p>
      <SkylineStrip
        scene={scene}
        light={light}
        condition={shoot.condition}
        origin={spot.skylineOrigin}
      />
      <dl className="ground-lines">
        {[
          ...sunLines(sun, spot.zone, shoot.condition).map(({ name, value, note }) => ({
            name,
            text: note === null ? value : `${value} (${note})`,
          })),
          ...COMPARED.filter(({ key }) => !seen.has(key)).map(({ key, title }) => ({
            name: title,
            text: row.cells[key].text,
          })),
          ...siteLines(spot)
            .filter(([name]) => name !== 'Foot traffic')
            .map(([name, text]) => ({ name, text })),
        ].map(({ name, text }) => (
          <div key={name}>
            <dt className="quiet">{name}</dt>
            <dd>{text}</dd>
          </div>
        ))}
      </dl>
    </article>
  );
}
