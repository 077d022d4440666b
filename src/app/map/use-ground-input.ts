import type { LatLng, LeafletMouseEvent, Map as LeafletMap } from 'leaflet';
import { useEffect, useEffectEvent } from 'react';
import type { GeoPoint } from '../../core/place/geo-point.ts';
import { placeFromMap } from './map-place.ts';

export type GroundInput = {
  /** Whether a click is for `onClick`; asked when it begins, for it may end something else. */
  readonly picks: boolean;
  /** A click on the map that ends where it began. */
  readonly onClick: (place: GeoPoint) => void;
  /** Enter, with the map in focus: its middle. */
  readonly onEnter: (place: GeoPoint) => void;
  readonly onEscape: () => void;
};

const SLACK_PX = 4;

/** Clicks and keys on the map while the ground listens. */
export const useGroundInput = (map: LeafletMap, listening: boolean, input: GroundInput): void => {
  const click = useEffectEvent((at: LatLng) => input.onClick(placeFromMap(at)));
  const enter = useEffectEvent(() => input.onEnter(placeFromMap(map.getCenter())));
  const picks = useEffectEvent(() => input.picks);
  const escape = useEffectEvent(() => input.onEscape());
  useEffect(
    function listen() {
      if (!listening) return undefined;
      const node = map.getContainer();
      let press: { readonly x: number; readonly y: number } | null = null;
      const onPress = ({ clientX, clientY }: PointerEvent): void => {
        press = picks() ? { x: clientX, y: clientY } : null;
      };
      const onClick = ({ latlng, originalEvent }: LeafletMouseEvent): void => {
        if (press === null) return;
        const { clientX, clientY } = originalEvent;
        if (Math.hypot(clientX - press.x, clientY - press.y) <= SLACK_PX) click(latlng);
      };
      const onKey = (event: KeyboardEvent): void => {
        if (event.target !== node) return;
        if (event.key === 'Enter') enter();
        if (event.key === 'Escape') escape();
      };
      map.on('click', onClick);
      node.addEventListener('pointerdown', onPress);
      node.addEventListener('keydown', onKey);
      return function stopListening() {
        map.off('click', onClick);
        node.removeEventListener('pointerdown', onPress);
        node.removeEventListener('keydown', onKey);
      };
    },
    [map, listening],
  );
};
