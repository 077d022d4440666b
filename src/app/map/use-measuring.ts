import type { Map as LeafletMap } from 'leaflet';
import { useEffect, useEffectEvent } from 'react';

/** The map takes the focus and shows the cross; Escape ends it. */
export const useMeasuring = (map: LeafletMap, onEnd: () => void): void => {
  const end = useEffectEvent(onEnd);
  useEffect(
    function takeTheMap() {
      const node = map.getContainer();
      const leave = (event: KeyboardEvent): void => {
        if (event.key === 'Escape') end();
      };
      node.classList.add('measuring');
      node.focus({ preventScroll: true });
      document.addEventListener('keydown', leave);
      return function giveItBack() {
        node.classList.remove('measuring');
        document.removeEventListener('keydown', leave);
      };
    },
    [map],
  );
};
