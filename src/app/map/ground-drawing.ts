import { circleMarker, geoJSON } from 'leaflet';
import type { Map as LeafletMap } from 'leaflet';
import type { Position } from 'geojson';
import { wrapDeg180 } from '../../core/units/angle.ts';
import type { Corner } from '../../core/skyline/obstacle.ts';

export type DrawnOutline = { readonly closed: boolean; readonly corners: readonly Corner[] };

export type DrawingHooks = {
  readonly onDrawn: (outline: DrawnOutline) => void;
  /** Once for each drag, on release. */
  readonly onReshaped: (corners: readonly Corner[]) => void;
};

export type Drawing = {
  /** The next clicks set the corners of a ring or a line. */
  readonly draw: (closed: boolean) => void;
  /** Whether a corner has been set by pointer. */
  readonly isDrawing: () => boolean;
  /** Puts an outline into the hand, in place of what was there. */
  readonly hold: (outline: DrawnOutline) => void;
  readonly rest: () => void;
  readonly stop: () => void;
};

/** A press so near to a corner is meant for it. */
const NEAR_PX = 18;

/** A centimetre on the ground. */
const DIGITS = 7;

/** Outlines drawn and reshaped by pointer; the drawing library is fetched with the first of them. */
export async function startDrawing(
  map: LeafletMap,
  inkColour: string,
  { onDrawn, onReshaped }: DrawingHooks,
): Promise<Drawing> {
  const [library, { TerraDrawLeafletAdapter }] = await Promise.all([
    import('terra-draw'),
    import('terra-draw-leaflet-adapter'),
  ]);
  const ink = inkColour as `#${string}`;
  const line = { lineStringColor: ink, lineStringWidth: 3 };
  const ring = { fillColor: ink, fillOpacity: 0.15, outlineColor: ink, outlineWidth: 2 };
  const points = { closingPointColor: ink, closingPointWidth: 6 };
  const corners = { midpoints: true, draggable: true, deletable: true };
  const flags = { feature: { draggable: true, selfIntersectable: true, coordinates: corners } };
  const draw = new library.TerraDraw({
    adapter: new TerraDrawLeafletAdapter({
      // It asks for the whole library and uses these two of it.
      lib: { circleMarker, geoJSON } as never,
      map,
      coordinatePrecision: DIGITS,
    }),
    modes: [
      new library.TerraDrawPolygonMode({
        pointerDistance: NEAR_PX,
        styles: { ...ring, ...points },
      }),
      new library.TerraDrawLineStringMode({
        pointerDistance: NEAR_PX,
        styles: { ...line, ...points },
      }),
      new library.TerraDrawSelectMode({
        pointerDistance: NEAR_PX,
        flags: { polygon: flags, linestring: flags },
        keyEvents: null,
        allowManualDeselection: false,
        styles: {
          selectedPolygonColor: ink,
          selectedPolygonFillOpacity: 0.15,
          selectedPolygonOutlineColor: ink,
          selectedPolygonOutlineWidth: 2,
          selectedLineStringColor: ink,
          selectedLineStringWidth: 3,
          selectionPointColor: '#ffffff',
          selectionPointWidth: 6,
          selectionPointOutlineColor: ink,
          selectionPointOutlineWidth: 2,
          midPointColor: ink,
          midPointWidth: 4,
          midPointOutlineWidth: 0,
        },
      }),
    ],
  });

  const outlineOf = (id: string | number): DrawnOutline | null => {
    const geometry = draw.getSnapshotFeature(id)?.geometry;
    if (geometry?.type === 'Polygon')
      return { closed: true, corners: (geometry.coordinates[0] ?? []).slice(0, -1).map(cornerOf) };
    if (geometry?.type === 'LineString')
      return { closed: false, corners: geometry.coordinates.map(cornerOf) };
    return null;
  };

  draw.on('finish', (id, { action }) => {
    const outline = outlineOf(id);
    if (outline === null) return;
    if (action !== 'draw') return onReshaped(outline.corners);
    draw.setMode('static');
    draw.removeFeatures([id]);
    onDrawn(outline);
  });
  draw.start();

  /** Once stopped it stays so, whoever still holds it. */
  const whileOn = (act: () => void): void => {
    if (draw.enabled) act();
  };
  const clear = (mode: string): void => {
    draw.setMode(mode);
    draw.clear();
  };
  return {
    draw: (closed) => whileOn(() => clear(closed ? 'polygon' : 'linestring')),
    isDrawing: () => draw.enabled && draw.getModeState() === 'drawing',
    hold: (outline) =>
      whileOn(() => {
        clear('static');
        const [added] = draw.addFeatures([featureOf(outline)]);
        if (added?.valid === true && added.id !== undefined) draw.selectFeature(added.id);
      }),
    rest: () => whileOn(() => clear('static')),
    stop: () => whileOn(() => draw.stop()),
  };
}

const rounded = (angleDeg: number): number => Number(angleDeg.toFixed(DIGITS));

/** The map may be panned into a copy of the world. */
const cornerOf = ([longitudeDeg = 0, latitudeDeg = 0]: Position): Corner => [
  rounded(wrapDeg180(longitudeDeg)),
  rounded(latitudeDeg),
];

const featureOf = ({ closed, corners }: DrawnOutline) => {
  const line = corners.map(([longitudeDeg, latitudeDeg]) => [
    rounded(longitudeDeg),
    rounded(latitudeDeg),
  ]);
  const [first = [0, 0]] = line;
  return closed
    ? {
        type: 'Feature' as const,
        properties: { mode: 'polygon' },
        geometry: { type: 'Polygon' as const, coordinates: [[...line, first]] },
      }
    : {
        type: 'Feature' as const,
        properties: { mode: 'linestring' },
        geometry: { type: 'LineString' as const, coordinates: line },
      };
};
