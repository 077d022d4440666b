/** Common picture sizes of sensors, long and short side. */
export const SENSOR_FORMATS = [
  { text: 'Medium format, 53.4 × 40', widthMm: 53.4, heightMm: 40 },
  { text: 'Medium format, 43.8 × 32.9', widthMm: 43.8, heightMm: 32.9 },
  { text: 'Full frame, 36 × 24', widthMm: 36, heightMm: 24 },
  { text: 'APS-C, 23.5 × 15.6', widthMm: 23.5, heightMm: 15.6 },
  { text: 'APS-C, 22.3 × 14.9', widthMm: 22.3, heightMm: 14.9 },
  { text: '4/3 type, 17.3 × 13', widthMm: 17.3, heightMm: 13 },
  { text: '1 inch type, 13.2 × 8.8', widthMm: 13.2, heightMm: 8.8 },
] as const;

/** 'own' where none of the formats fits; else its place in the list. */
export function formatOf(framing: {
  readonly sensorWidthMm: number;
  readonly sensorHeightMm: number;
}): string {
  const at = SENSOR_FORMATS.findIndex(
    ({ widthMm, heightMm }) =>
      widthMm === framing.sensorWidthMm && heightMm === framing.sensorHeightMm,
  );
  return at < 0 ? 'own' : String(at);
}
