/** Layers of the open basemap schema that are drawn, from the ground up. */
export const DRAWN_LAYERS: readonly string[] = [
  'earth',
  'landcover',
  'landuse',
  'water',
  'buildings',
  'roads',
  'boundaries',
  'places',
];
