import { lazy, Suspense, type ComponentType, type ReactNode } from 'react';

import { useShoot } from '../../../state/documents.tsx';
import { lookAtGround, useGroundView } from '../../../state/ground-view.ts';
import type { GroundContentsProps } from './GroundContents.tsx';
import type { GroundOnMapProps } from './GroundOnMap.tsx';

const LazyContents = lazy(async () => ({
  default: await import('./GroundContents.tsx').then(
    ({ GroundContents }) => GroundContents,
    (): ComponentType<GroundContentsProps> => NotLoaded,
  ),
}));

const LazyOnMap = lazy(async () => ({
  default: await import('./GroundOnMap.tsx').then(
    ({ GroundOnMap }) => GroundOnMap,
    (): ComponentType<GroundOnMapProps> => () => null,
  ),
}));

/** Opens and closes the ground: what stands round the spots. */
export function GroundPanel(): ReactNode {
  const open = useGroundView((view) => view.open);
  return (
    <button
      type="button"
      aria-pressed={open}
      data-open-ground
      onClick={() => lookAtGround({ open: !open, tool: null, corners: [], obstacleId: null })}
    >
      Ground
    </button>
  );
}

/** Stands over the spot's sheet while the ground is open. */
export function GroundSheet(props: GroundContentsProps): ReactNode {
  const open = useGroundView((view) => view.open);
  if (!open) return null;
  return (
    <Suspense fallback={<p className="quiet">Opening…</p>}>
      <LazyContents {...props} />
    </Suspense>
  );
}

/** The ground's layers on the map, fetched when there is something to draw. */
export function GroundMap(props: GroundOnMapProps): ReactNode {
  const open = useGroundView((view) => view.open);
  const { obstacles, outlineSets } = useShoot();
  const isBare = Object.keys(obstacles).length + Object.keys(outlineSets).length === 0;
  if (isBare && !open) return null;
  return (
    <Suspense>
      <LazyOnMap {...props} />
    </Suspense>
  );
}

const NotLoaded = (): ReactNode => (
  <p className="fault" role="alert">
    This part of the app could not be fetched. Reload the page when there is a network.
  </p>
);
