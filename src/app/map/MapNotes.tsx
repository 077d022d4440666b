import type { Map as LeafletMap } from 'leaflet';
import type { ReactNode } from 'react';
import { drawGraticuleLabelsLayer, makeGraticuleLabelsLayer } from './graticule-labels-layer.ts';
import { ScaleBar } from './ScaleBar.tsx';
import { useMapLayer } from './use-map-layer.ts';
import { useMapZoom } from './use-map-zoom.ts';

type MapNotesProps = {
  readonly map: LeafletMap;
  /** Tiles of the network lie over the lines of latitude and longitude. */
  readonly tiled: boolean;
  readonly outlineOnly: boolean;
  /** Spots are drawn as dots. */
  readonly crowded: boolean;
  readonly outlineFailed: boolean;
  readonly credits: readonly string[];
  readonly legend: ReactNode;
};

const COARSE_FROM_ZOOM = 9;

export function MapNotes({
  map,
  tiled,
  outlineOnly,
  crowded,
  outlineFailed,
  credits,
  legend,
}: MapNotesProps): ReactNode {
  const zoom = useMapZoom(map);
  return (
    <>
      {tiled ? null : <GraticuleLabels map={map} />}
      <div className="map-foot">
        {legend}
        <div className="map-words">
          <ScaleBar map={map} />
          {crowded && <p className="map-note">many spots: rings and names from closer by</p>}
          {outlineFailed && <p className="map-note">the map outline could not be read</p>}
          {outlineOnly && zoom >= COARSE_FROM_ZOOM && !outlineFailed && (
            <p className="map-note">outline only, coarse at this scale</p>
          )}
          <p className="map-credits">
            {credits.map((credit) => (
              <span key={credit}>{withLinks(credit)}</span>
            ))}
          </p>
        </div>
      </div>
    </>
  );
}

function GraticuleLabels({ map }: { readonly map: LeafletMap }): ReactNode {
  useMapLayer(map, makeGraticuleLabelsLayer, drawGraticuleLabelsLayer, null);
  return null;
}

const withLinks = (credit: string): ReactNode =>
  credit.split(/(https:\/\/[^\s,]+)/).map((part) =>
    part.startsWith('https://') ? (
      <a key={part} href={part} target="_blank" rel="noreferrer">
        {part.replace('https://', '')}
      </a>
    ) : (
      part
    ),
  );
