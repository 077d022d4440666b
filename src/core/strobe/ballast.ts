/** Air at 15 °C and sea level: q = ½ ρ v² with 1.226 kg/m³. [iso2533] */
const HALF_AIR_KG_M3 = 0.613;
const GRAVITY_M_S2 = 9.80665;
/** Of a flat plate or a box across the wind. [windLoads] */
export const SAIL_DRAG = 1.2;

export type Stand = {
  /** Face of the modifier across the wind. */
  readonly sailAreaM2: number;
  /** Middle of the modifier above the ground. */
  readonly sailHeightM: number;
  /** From the middle of the stand to the foot of a leg. */
  readonly legSpreadM: number;
  readonly legs: 3 | 4;
  /** Of stand, head and modifier, about the middle. */
  readonly massKg: number;
};

export const windForceN = (sailAreaM2: number, gustMS: number): number =>
  HALF_AIR_KG_M3 * SAIL_DRAG * sailAreaM2 * gustMS ** 2;

/** From the middle to the line between two neighbouring feet, over which a stand tips: spread · cos(180°/legs). */
export const tippingLeverM = ({ legSpreadM, legs }: Pick<Stand, 'legSpreadM' | 'legs'>): number =>
  legSpreadM * Math.cos(Math.PI / legs);

/**
 * Mass that keeps a stand from tipping in a gust, hung at its middle; 0 where its own weight does.
 * The wind comes from the worst side; the gust is steady for as long as it lasts; feet do not slip
 * and the ground holds. An estimate, not an approval. [windLoads]
 */
export const ballastAtMiddleKg = (stand: Stand, gustMS: number): number => {
  const tippingNm = windForceN(stand.sailAreaM2, gustMS) * stand.sailHeightM;
  return Math.max(0, tippingNm / (tippingLeverM(stand) * GRAVITY_M_S2) - stand.massKg);
};

/**
 * The same hung on the windward leg half way out, which lies farther from the line over which the
 * stand tips: spread/2 more.
 */
export const ballastOnWindwardLegKg = (stand: Stand, gustMS: number): number => {
  const lever = tippingLeverM(stand);
  return (ballastAtMiddleKg(stand, gustMS) * lever) / (lever + stand.legSpreadM / 2);
};

/** The gust at which a stand with its ballast at the middle begins to tip. */
export const tippingGustMS = (stand: Stand, ballastKg: number): number =>
  Math.sqrt(
    ((stand.massKg + ballastKg) * GRAVITY_M_S2 * tippingLeverM(stand)) /
      (HALF_AIR_KG_M3 * SAIL_DRAG * stand.sailAreaM2 * stand.sailHeightM),
  );
