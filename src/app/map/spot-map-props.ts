import type { Map as LeafletMap } from 'leaflet';
import type { ReactNode } from 'react';
import type { GeoPoint } from '../../core/place/geo-point.ts';
import type { DeclinationAt } from './CompassLine.tsx';
import type { LocalMap } from './local/local-map.ts';
import type { MapOutline, OutlineDetail } from './map-outline.ts';
import type { MapSpot } from './map-spot.ts';
import type { NamedPlace } from './names-layer.ts';
import type { EvRange } from './ring-tone.ts';

export type SpotMapProps = {
  readonly spots: readonly MapSpot[];
  readonly selectedId: string | null;
  readonly ringRangeEv: EvRange;
  /** Null asks nothing of any network. */
  readonly tiles: { readonly url: string; readonly attribution: string } | null;
  /** A map archive of this device, drawn between the outline and the tiles. */
  readonly localMap?: LocalMap | null;
  /** The next click on the map, or Enter at its centre, says where a new spot is. */
  readonly adding: boolean;
  /** Another tool has the pointer: nothing is measured meanwhile. */
  readonly drawing?: boolean;
  /** Lets a measured bearing be read on a compass too. */
  readonly declinationAt?: DeclinationAt;
  readonly onSelect: (id: string) => void;
  /** Once for each drag or held key. */
  readonly onMove: (id: string, point: GeoPoint) => void;
  readonly onTurn: (id: string, bearingDeg: number) => void;
  readonly onAddAt: (point: GeoPoint) => void;
  /** Asked once for '50m', and for '10m' when the view first comes close. */
  readonly loadOutline: (detail: OutlineDetail) => Promise<MapOutline | null>;
  readonly loadNames?: () => Promise<readonly NamedPlace[]>;
  /** What the first view shows, once there are any. */
  readonly fitTo: readonly GeoPoint[];
  /** Stands in the lower left corner. */
  readonly legend?: ReactNode;
  /** Further layers of the map. */
  readonly children?: (map: LeafletMap) => ReactNode;
};
