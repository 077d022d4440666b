import { useMemo } from 'react';

import { useSavedSetting } from '../../state/saved-setting.ts';
import { tileAddressFault } from './tile-address.ts';
import { useLocalMap, type ShownLocalMap } from './use-local-map.ts';

export type MapTiles = {
  /** Null until the settings are read, where tiles are off, or where no address is set. */
  readonly tiles: { readonly url: string; readonly attribution: string } | null;
  /** The map archive of this device. */
  readonly local: ShownLocalMap;
  readonly on: boolean;
  readonly address: string;
  readonly attribution: string;
  readonly turn: (on: boolean) => void;
  readonly setAddress: (address: string) => void;
  readonly setAttribution: (attribution: string) => void;
};

export function useMapTiles(): MapTiles {
  const [on, turn] = useSavedSetting<boolean>('map-tiles', false);
  const [address, setAddress] = useSavedSetting<string>('map-tile-address', '');
  const [attribution, setAttribution] = useSavedSetting<string>('map-tile-attribution', '');
  const local = useLocalMap();
  const usable = on === true && address !== null && tileAddressFault(address) === null;
  const tiles = useMemo(
    () => (usable && address !== null ? { url: address, attribution: attribution ?? '' } : null),
    [usable, address, attribution],
  );
  return {
    tiles,
    local,
    on: on === true,
    address: address ?? '',
    attribution: attribution ?? '',
    turn,
    setAddress,
    setAttribution,
  };
}
