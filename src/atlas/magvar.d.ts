/** The package brings no types of its own; only what is used here. */
declare module 'magvar' {
  /** Heights in km; intensities in nT, angles in degrees, east and down positive. */
  export const magneticField: (
    latitudeDeg: number,
    longitudeDeg: number,
    heightKm: number,
    decimalYear: number,
  ) => { readonly declination: number; readonly h: number };
}
