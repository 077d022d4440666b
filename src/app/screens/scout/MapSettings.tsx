import { useMemo, type ReactNode } from 'react';

import { useSavedSetting } from '../../state/saved-setting.ts';
import { Switch } from '../../ui/Switch.tsx';
import { TextField } from '../../ui/TextField.tsx';
import { tileAddressFault, tileHost } from './tile-address.ts';

export type MapTiles = {
  /** Null until the settings are read, where tiles are off, or where no address is set. */
  readonly tiles: { readonly url: string; readonly attribution: string } | null;
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
  const usable = on === true && address !== null && tileAddressFault(address) === null;
  const tiles = useMemo(
    () => (usable && address !== null ? { url: address, attribution: attribution ?? '' } : null),
    [usable, address, attribution],
  );
  return {
    tiles,
    on: on === true,
    address: address ?? '',
    attribution: attribution ?? '',
    turn,
    setAddress,
    setAttribution,
  };
}

/** Whether the map asks a server for tiles, which, and what that server learns. */
export function MapSettings({ map }: { readonly map: MapTiles }): ReactNode {
  const host = tileHost(map.address);
  return (
    <details className="map-settings">
      <summary data-open="map">Map</summary>
      <div>
        <Switch
          label="Map tiles from the network"
          field="map-tiles"
          on={map.on}
          disabled={host === null && !map.on}
          onTurn={map.turn}
        />
        <p className="quiet" data-figure="tiles-privacy">
          The address of every tile you look at goes to {host ?? 'that server'}, with your network
          address. Off, the map is the outline kept in this app and nothing is asked of anyone.
        </p>
        <TextField
          label="Address of the tiles, with {z}, {x} and {y}"
          field="tile-address"
          value={map.address}
          faultOf={tileAddressFault}
          onCommit={(text) => map.setAddress(text.trim())}
        />
        <TextField
          label="Whom the map must credit"
          field="tile-attribution"
          maxLength={300}
          value={map.attribution}
          onCommit={map.setAttribution}
        />
        <p className="quiet">
          Use a server whose terms allow it: your own, or one you have an agreement with.
        </p>
      </div>
    </details>
  );
}
