import type { ReactNode } from 'react';

import { look } from '../../state/view.ts';
import { Switch } from '../../ui/Switch.tsx';
import { TextField } from '../../ui/TextField.tsx';
import { LocalMapFiles } from './LocalMapFiles.tsx';
import type { MapTiles } from './use-map-tiles.ts';
import { PlaceSearch } from './PlaceSearch.tsx';
import { tileAddressFault, tileHost } from './tile-address.ts';

type MapSettingsContentsProps = {
  readonly map: MapTiles;
  /** A place was chosen to be looked at. */
  readonly onShown: () => void;
};

/**
 * A place to look at, maps kept on this device, and whether a server is asked for tiles, which, and
 * what it learns.
 */
export function MapSettingsContents({ map, onShown }: MapSettingsContentsProps): ReactNode {
  const host = tileHost(map.address);
  return (
    <>
      <PlaceSearch
        label="Show a town or village, by how its name begins"
        field="map-search"
        onShow={({ point, name }) => {
          look({ shownPlace: { point, name } });
          onShown();
        }}
      />
      <LocalMapFiles shown={map.local} />
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
    </>
  );
}
