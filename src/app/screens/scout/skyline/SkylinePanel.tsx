import './skyline.css';
import type { ReactNode } from 'react';

import type { Spot } from '../../../../core/plan/shoot.ts';
import type { ObstacleCounts, SourceShares } from './skyline-sources.ts';
import { obstaclesLine } from './source-lines.ts';
import { TerrainPart } from './TerrainPart.tsx';
import { TracePart } from './TracePart.tsx';

type SkylinePanelProps = {
  readonly spotId: string;
  readonly spot: Spot;
  readonly shares: SourceShares;
  readonly counts: ObstacleCounts;
};

/** The three sources of a spot's skyline, each with its origin, and what can be done about it. */
export function SkylinePanel({ spotId, spot, shares, counts }: SkylinePanelProps): ReactNode {
  return (
    <div className="skyline-panel">
      <p className="quiet">
        The highest of terrain, obstacles and trace stands, azimuth by azimuth, as seen from the
        camera. Where none knows anything the horizon is level.
      </p>
      <TerrainPart spotId={spotId} spot={spot} share={shares.terrain} />
      <article>
        <h3>Obstacles</h3>
        <p data-figure="source-obstacles">{obstaclesLine(counts, shares.obstacles)}</p>
      </article>
      <TracePart spotId={spotId} spot={spot} share={shares.trace} />
    </div>
  );
}
