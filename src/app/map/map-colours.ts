export type MapColours = {
  readonly land: string;
  readonly sea: string;
  readonly coast: string;
  readonly ink: string;
};

/** What the style sheet gives the map at this moment: a canvas does not follow it by itself. */
export const mapColours = (): MapColours => {
  const style = getComputedStyle(document.documentElement);
  const read = (name: string, otherwise: string): string =>
    style.getPropertyValue(name).trim() || otherwise;
  return {
    land: read('--map-land', '#f1f0ec'),
    sea: read('--map-sea', '#dfe5ea'),
    coast: read('--map-coast', '#9aa3a8'),
    ink: read('--map-ink', '#161616'),
  };
};
