import { lazyPart } from '../state/lazy-part.ts';

export const LazyMeasure = lazyPart(async () => (await import('./Measure.tsx')).Measure);
export const LazyOwnPlace = lazyPart(async () => (await import('./OwnPlace.tsx')).OwnPlace);
export const LazyMarkedPlace = lazyPart(
  async () => (await import('./MarkedPlacePanel.tsx')).MarkedPlacePanel,
);
export const LazyLocalMapTiles = lazyPart(
  async () => (await import('./local/LocalMapTiles.tsx')).LocalMapTiles,
);
