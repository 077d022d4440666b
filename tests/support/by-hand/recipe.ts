/** A light as it stands, in the figures the trade gives it by. */
export type LightThere = {
  readonly role: 'key' | 'fill' | 'rim';
  /** Where it is to land against the camera setting. */
  readonly stops: number;
  /** f-number × metres at ISO 100, full power, far from a small source. */
  readonly guideNumber: number;
  readonly lossStops: number;
  /** Metres from the modifier's face. */
  readonly distance: number;
  /** Metres, of the disc that is as large as the modifier's face. */
  readonly radius: number;
};

/** f-number squared at ISO 100 and full power: inverse square of a disc, d² + r². */
export const fullFlash = ({ guideNumber, lossStops, distance, radius }: LightThere): number =>
  (guideNumber ** 2 * 2 ** -lossStops) / (distance ** 2 + radius ** 2);

/** The guide number that one reading of a flash meter gives: the light from a disc of this radius. */
export const guideNumberOfReading = (fNumber: number, distance: number, radius: number): number =>
  fNumber * Math.sqrt(distance ** 2 + radius ** 2);

export type CeilingThere = {
  readonly role: LightThere['role'];
  /** EV that the side meets at full power and sync. */
  readonly ceiling: number;
  /** Brightest sky it holds. */
  readonly reach: number;
  readonly inHand: number;
};

export type NeedThere = {
  readonly role: LightThere['role'];
  /** Stops below full power, not rounded; −∞ where the ambient alone is enough. */
  readonly power: number;
};

export type AskedThere = {
  readonly lights: readonly LightThere[];
  /** EV of the light on the face without flash. */
  readonly ambient: number;
  /** EV of what the hold counts from. */
  readonly reference: number;
  readonly holdStops: number;
  readonly syncShutter: number;
};

/** What lights this side besides itself: the fill, on the axis, lights the key's face too. */
const besides = (role: LightThere['role'], lights: readonly LightThere[]): readonly LightThere[] =>
  role === 'key' ? lights.filter((one) => one.role === 'fill') : [];

/** Ambient in f-number squared per second at ISO 100; it does not count on the rim. */
const ambientRate = (role: LightThere['role'], ambient: number): number =>
  role === 'rim' ? 0 : 2 ** ambient;

/** What a light gives at full power and sync, f-number squared per second at ISO 100. */
const fullRate = (light: LightThere, asked: AskedThere): number =>
  fullFlash(light) / asked.syncShutter;

/**
 * What a fill may give while the camera stands at an EV: its side, fill + ambient, is to land on
 * 2^stops of that level. Nothing where the ambient is there already, all it has where that is less.
 */
const fillRate = (fill: LightThere, asked: AskedThere, level: number): number => {
  const asksFor = 2 ** (level + fill.stops) - 2 ** asked.ambient;
  return Math.min(fullRate(fill, asked), Math.max(0, asksFor));
};

const LOWEST = -40;
const HIGHEST = 60;

/**
 * The brightest EV at which a light at full power still meets its stops. Every side lands on its
 * own stops: fill + ambient on 2^fill stops of the level, key + fill + ambient on 2^key stops. So
 * the fill beside a key at full power is turned down to what its stops ask for at that level.
 * Found by halving: of a rising level, what falls on the side is an ever smaller share, so there is
 * enough below the ceiling and too little above it. Where no fill is turned down, the ceiling is
 * log2((S/t + 2^ambient) / 2^stops), S of everything on the side: of a fill and a rim always, of a
 * key where the fill at full power is just what its stops ask for, or less.
 */
function ceilingOf(light: LightThere, asked: AskedThere): number {
  const fills = besides(light.role, asked.lights);
  const isEnough = (level: number): boolean => {
    const filled = fills.reduce((sum, fill) => sum + fillRate(fill, asked, level), 0);
    const given = fullRate(light, asked) + filled + ambientRate(light.role, asked.ambient);
    return given >= 2 ** (level + light.stops);
  };
  let below = LOWEST;
  let above = HIGHEST;
  for (let halvings = 0; halvings < 60; halvings += 1) {
    const middle = (below + above) / 2;
    if (isEnough(middle)) below = middle;
    else above = middle;
  }
  return below;
}

/** The ceiling of each side, what it makes of the reach, and what is left of that. */
export const ceilingsThere = (asked: AskedThere): readonly CeilingThere[] =>
  asked.lights.map((light) => {
    const ceiling = ceilingOf(light, asked);
    const reach = ceiling - asked.holdStops;
    return { role: light.role, ceiling, reach, inHand: reach - asked.reference };
  });

/** log2((S/t + 2^ambient) / 2^stops) − hold of each side, everything on it at full power. */
export const allAtFullThere = (
  asked: AskedThere,
): readonly { readonly role: LightThere['role']; readonly reach: number }[] =>
  asked.lights.map((light) => {
    const rates = [light, ...besides(light.role, asked.lights)].map((one) => fullRate(one, asked));
    const all = rates.reduce((sum, one) => sum + one, ambientRate(light.role, asked.ambient));
    return { role: light.role, reach: Math.log2(all) - light.stops - asked.holdStops };
  });

/** Settings as a camera and its heads show them. */
export type SettingsThere = {
  readonly shutter: number;
  readonly fNumber: number;
  readonly iso: number;
  /** All lens filters together. */
  readonly filterStops: number;
  /** By place of the light: 0 full, −1 half. */
  readonly powers: readonly number[];
};

/** Scene EV at ISO 100 that settings render as mid-grey: log2(N²/t) − log2(ISO/100) + filters. */
export const settingsEv = ({ shutter, fNumber, iso, filterStops }: SettingsThere): number =>
  Math.log2(fNumber ** 2 / shutter) - Math.log2(iso / 100) + filterStops;

const powered = (asked: AskedThere, { powers }: SettingsThere, place: number): number => {
  const light = asked.lights[place];
  return light === undefined ? 0 : fullFlash(light) * 2 ** (powers[place] ?? NaN);
};

/** What reaches one face of the lights named, f-number squared at ISO 100, ambient included. */
function onFace(asked: AskedThere, set: SettingsThere, role: LightThere['role']): number {
  const lit = asked.lights.map((light, place) =>
    light.role === role || besides(role, asked.lights).includes(light)
      ? powered(asked, set, place)
      : 0,
  );
  const flash = lit.reduce((sum, one) => sum + one, 0);
  return flash + set.shutter * ambientRate(role, asked.ambient);
}

export type LandingThere = {
  readonly sky: number;
  readonly unlit: number;
  /** By place of the light: the face its side lands on, stops from mid-grey. */
  readonly faces: readonly number[];
  /** f-number of a flash meter at the key's face, cord mode, shutter and ISO set. */
  readonly meter: number;
  /** By place: f-number of that flash alone. */
  readonly flashMeters: readonly number[];
  /** Share of the flash in the reading. */
  readonly flashShare: number;
};

/** Run forward from the settings: where everything lands. */
export function landingThere(asked: AskedThere, set: SettingsThere): LandingThere {
  const ev = settingsEv(set);
  const sensitivity = set.iso / 100;
  const total = onFace(asked, set, 'key');
  return {
    sky: asked.reference - ev,
    unlit: asked.ambient - ev,
    faces: asked.lights.map(({ role }) => Math.log2(onFace(asked, set, role) / set.shutter) - ev),
    meter: Math.sqrt(total * sensitivity),
    flashMeters: asked.lights.map((_, place) =>
      Math.sqrt(powered(asked, set, place) * sensitivity),
    ),
    flashShare: 1 - (set.shutter * ambientRate('key', asked.ambient)) / total,
  };
}

/** Power that each head needs, the rim and the fill first, then the key on top of the fill. */
export function needsThere(asked: AskedThere, set: SettingsThere): readonly NeedThere[] {
  const perStop = set.shutter * 2 ** settingsEv(set);
  const wanted = (light: LightThere): number =>
    perStop * 2 ** light.stops - set.shutter * ambientRate(light.role, asked.ambient);
  return asked.lights.map((light) => {
    const already = besides(light.role, asked.lights).reduce(
      (sum, one) => sum + Math.max(0, wanted(one)),
      0,
    );
    const flash = wanted(light) - already;
    return {
      role: light.role,
      power: flash <= 0 ? -Infinity : Math.log2(flash / fullFlash(light)),
    };
  });
}

/** Recycling takes as long as the energy it puts back: the share of full power. */
export const recycleThere = (fullSeconds: number, power: number): number =>
  fullSeconds * 2 ** power;

/** Pops of a charge go with the inverse of the power. */
export const popsThere = (fullPops: number, power: number): number => fullPops / 2 ** power;
