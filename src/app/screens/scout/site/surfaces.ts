/**
 * What common ground reflects of daylight, generic. Asphalt: B. Pon, Pavement Albedo, Heat Island
 * Group, 1999. Grass, sand, concrete, snow: T. Markvart, L. Castañer, Practical Handbook of
 * Photovoltaics, Elsevier, 2003. Pale stone: common practice.
 */
export const SURFACES = [
  { name: 'worn asphalt', reflectance: 0.12 },
  { name: 'grass', reflectance: 0.25 },
  { name: 'pale stone', reflectance: 0.35 },
  { name: 'sand', reflectance: 0.4 },
  { name: 'new concrete', reflectance: 0.55 },
  { name: 'fresh snow', reflectance: 0.8 },
] as const;

export const SURFACE_SOURCES =
  'Generic dry values: Pon, Pavement Albedo, 1999 (asphalt); Markvart and Castañer, Practical Handbook of Photovoltaics, 2003 (grass, sand, concrete, snow); pale stone from common practice. Wet ground reflects less.';

/** The surface of that reflectance, or 'own'. */
export const surfaceOf = (reflectance: number): string =>
  SURFACES.find((surface) => surface.reflectance === reflectance)?.name ?? 'own';
