import type { Feature, LabelRule, PaintRule } from 'protomaps-leaflet';
import type { MapColours } from '../map-colours.ts';
import { mixTones } from './mix-tones.ts';

type Symbolizers = Pick<
  typeof import('protomaps-leaflet'),
  | 'CenteredTextSymbolizer'
  | 'GeomType'
  | 'LineLabelSymbolizer'
  | 'LineSymbolizer'
  | 'PolygonSymbolizer'
>;

const FACE = "'Archivo Variable', sans-serif";

/** Roads from the widest down: from which zoom, how wide at zoom 16, how far from land to ink. */
const ROADS = [
  { kind: 'path', fromZoom: 15, widthPx: 1, share: 0.22 },
  { kind: 'minor_road', fromZoom: 13, widthPx: 5, share: 0.12 },
  { kind: 'medium_road', fromZoom: 11, widthPx: 7, share: 0.15 },
  { kind: 'major_road', fromZoom: 8, widthPx: 9, share: 0.18 },
  { kind: 'highway', fromZoom: 5, widthPx: 11, share: 0.24 },
] as const;

const GREEN = [
  'park',
  'forest',
  'wood',
  'nature_reserve',
  'grass',
  'meadow',
  'farmland',
  'cemetery',
];

/** Ground, water, buildings and ways in greys, quiet under the spots. */
export const paintRulesFor = (
  { land, sea, ink, coast }: MapColours,
  { GeomType, PolygonSymbolizer, LineSymbolizer }: Symbolizers,
): PaintRule[] => [
  { dataLayer: 'earth', symbolizer: new PolygonSymbolizer({ fill: land }) },
  {
    dataLayer: 'landcover',
    symbolizer: new PolygonSymbolizer({ fill: mixTones(land, ink, 0.025) }),
  },
  {
    dataLayer: 'landuse',
    symbolizer: new PolygonSymbolizer({ fill: mixTones(land, ink, 0.045) }),
    filter: (_zoom, feature) => GREEN.includes(kindOf(feature)),
  },
  {
    dataLayer: 'water',
    symbolizer: new PolygonSymbolizer({ fill: sea }),
    filter: (_zoom, feature) => feature.geomType === GeomType.Polygon,
  },
  {
    dataLayer: 'water',
    symbolizer: new LineSymbolizer({ color: sea, width: 1.5 }),
    filter: (_zoom, feature) => feature.geomType === GeomType.Line,
  },
  {
    dataLayer: 'buildings',
    minzoom: 14,
    symbolizer: new PolygonSymbolizer({ fill: mixTones(land, ink, 0.16) }),
  },
  ...ROADS.map(({ kind, fromZoom, widthPx, share }) => ({
    dataLayer: 'roads',
    minzoom: fromZoom,
    symbolizer: new LineSymbolizer({
      color: mixTones(land, ink, share),
      width: (zoom: number) => Math.max(0.75, widthPx * 2 ** ((Math.min(zoom, 18) - 16) / 1.5)),
      lineCap: 'round',
      lineJoin: 'round',
    }),
    filter: (_zoom: number, feature: Feature) => kindOf(feature) === kind,
  })),
  {
    dataLayer: 'roads',
    minzoom: 11,
    symbolizer: new LineSymbolizer({ color: mixTones(land, ink, 0.4), width: 1, dash: [6, 4] }),
    filter: (_zoom, feature) => kindOf(feature) === 'rail',
  },
  {
    dataLayer: 'boundaries',
    symbolizer: new LineSymbolizer({ color: coast, width: 1, opacity: 0.5 }),
  },
];

/** Names of towns, and of ways from close by. */
export const labelRulesFor = (
  { land, ink }: MapColours,
  { CenteredTextSymbolizer, LineLabelSymbolizer }: Symbolizers,
): LabelRule[] => [
  {
    dataLayer: 'places',
    symbolizer: new CenteredTextSymbolizer({
      font: `600 13px ${FACE}`,
      fill: mixTones(ink, land, 0.2),
      stroke: land,
      width: 2,
    }),
  },
  {
    dataLayer: 'roads',
    minzoom: 15,
    symbolizer: new LineLabelSymbolizer({
      font: `500 11px ${FACE}`,
      fill: mixTones(ink, land, 0.3),
      stroke: land,
      width: 2,
    }),
    filter: (_zoom, feature) => kindOf(feature) !== 'rail',
  },
];

/** Older archives of the schema write the kind with a prefix. */
const kindOf = ({ props }: Feature): string => {
  const kind = props['kind'] ?? props['pmap:kind'];
  return typeof kind === 'string' ? kind : '';
};
