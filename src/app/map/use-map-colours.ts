import { useEffect, useState } from 'react';
import type { MapColours } from './map-colours.ts';
import { mapColours } from './map-colours.ts';

/** The theme's map colours; a new object only when one of them has changed. */
export const useMapColours = (): MapColours => {
  const [colours, setColours] = useState(mapColours);
  useEffect(function followTheme() {
    const read = (): void => setColours((held) => (same(held, mapColours()) ? held : mapColours()));
    const attributes = new MutationObserver(read);
    attributes.observe(document.documentElement, { attributes: true });
    const darkness = matchMedia('(prefers-color-scheme: dark)');
    darkness.addEventListener('change', read);
    return function leaveTheme() {
      attributes.disconnect();
      darkness.removeEventListener('change', read);
    };
  }, []);
  return colours;
};

const same = (one: MapColours, other: MapColours): boolean =>
  one.land === other.land &&
  one.sea === other.sea &&
  one.coast === other.coast &&
  one.ink === other.ink;
