import { lazy, type ComponentType } from 'react';

/** A part of the page fetched when first used; where it cannot be fetched, the page stands without. */
export const lazyPart = <Props extends object>(
  load: () => Promise<ComponentType<Props>>,
): ComponentType<Props> =>
  lazy(async () => ({ default: await load().catch((): ComponentType<Props> => () => null) }));
