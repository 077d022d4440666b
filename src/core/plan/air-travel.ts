/** How a lithium battery may fly, by its watt-hours. */
export type AirClass = 'cabin' | 'ask-carrier' | 'not-in-cabin';

/** Up to here in the cabin without asking. [iataDgr] */
const CABIN_WH = 100;
/** Up to here with the carrier's approval; above it not with passengers. [iataDgr] */
const APPROVAL_WH = 160;
/** Spares of the middle class that a passenger may take. [iataDgr] */
export const MOST_SPARES = 2;

/** Rules differ by carrier and by country, and change; spares never go in the hold. (I9) [iataDgr] [practitionerPages] */
export const airClass = (wattHours: number): AirClass => {
  if (wattHours <= CABIN_WH) return 'cabin';
  return wattHours <= APPROVAL_WH ? 'ask-carrier' : 'not-in-cabin';
};

/** Spares of the middle class beyond what one passenger may take. [iataDgr] */
export const sparesTooMany = (battery: {
  readonly wattHours: number;
  readonly spares: number;
}): number =>
  airClass(battery.wattHours) === 'ask-carrier' ? Math.max(0, battery.spares - MOST_SPARES) : 0;
