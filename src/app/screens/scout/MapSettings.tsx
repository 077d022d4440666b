import { Suspense, useMemo, useRef, useState, type ReactNode } from 'react';

import { lazyPart } from '../../state/lazy-part.ts';
import { useSavedSetting } from '../../state/saved-setting.ts';
import { look } from '../../state/view.ts';
import { Switch } from '../../ui/Switch.tsx';
import { TextField } from '../../ui/TextField.tsx';
import './map-settings.css';
import { PlaceSearch } from './PlaceSearch.tsx';
import { tileAddressFault, tileHost } from './tile-address.ts';
import { useLocalMap, type ShownLocalMap } from './use-local-map.ts';

const LocalMapFiles = lazyPart(async () => (await import('./LocalMapFiles.tsx')).LocalMapFiles);

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

/**
 * A place to look at, maps kept on this device, and whether a server is asked for tiles, which, and
 * what it learns.
 */
export function MapSettings({ map }: { readonly map: MapTiles }): ReactNode {
  const host = tileHost(map.address);
  const details = useRef<HTMLDetailsElement>(null);
  const [opened, setOpened] = useState(false);
  return (
    <details
      ref={details}
      className="map-settings"
      onToggle={(event) => setOpened(opened || event.currentTarget.open)}
    >
      <summary data-open="map">Map</summary>
      <div>
        <PlaceSearch
          label="Show a town or village, by how its name begins"
          field="map-search"
          onShow={({ point, name }) => {
            look({ shownPlace: { point, name } });
            details.current?.removeAttribute('open');
          }}
        />
        <Suspense>{opened ? <LocalMapFiles shown={map.local} /> : null}</Suspense>
        <h3>Tiles from the network</h3>
        <Switch
          label="Map tiles from the network"
          field="map-tiles"
          on={map.on}
          disabled={host === null && !map.on}
          onTurn={map.turn}
        />
        <p className="quiet" data-figure="tiles-privacy">
          The address of every tile you look at, which tells where and how close, goes to{' '}
          {host ?? 'that server'}, with your network address and the address this app was opened at.
          Off, the map is what is kept on this device and nothing is asked of anyone.
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
