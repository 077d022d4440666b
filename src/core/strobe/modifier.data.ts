/** Stops lost against the bare standard reflector at equal distance on the axis; negative gains. */
export type LossStops = { readonly low: number; readonly middle: number; readonly high: number };

export type GenericModifier = {
  readonly name: string;
  readonly lossStops: LossStops;
  readonly widthM: number;
  readonly heightM: number;
  readonly round: boolean;
};

export type GenericAddOn = { readonly name: string; readonly lossStops: LossStops };

/**
 * Losses are the ranges in circulation; no standard measures them, and two modifiers of one name
 * differ by a stop. One metered shot replaces them. Sizes are usual ones. A metered comparison of
 * one small flash at 1.8 m found 2.2 for a reflected white umbrella, 1.7 to 1.9 shot through, 0.9
 * for a box with one diffuser (H1). [lightingPractice] [practitionerPages]
 */
export const GENERIC_MODIFIERS = {
  'standard-reflector': modifier('Standard reflector', [0, 0, 0], 0.18),
  'bare-head': modifier('Bare head, no reflector', [1, 1.5, 2], 0.08),
  'frosted-dome': modifier('Frosted dome', [1.3, 2, 2.7], 0.12),
  'long-throw-reflector': modifier('Long-throw reflector', [-2, -1.5, -1], 0.35),
  'beauty-dish': modifier('Beauty dish', [0.5, 0.75, 1], 0.55),
  'umbrella-silver': modifier('Umbrella, silver, reflected', [0.5, 0.75, 1], 1.1),
  'umbrella-white': modifier('Umbrella, white, reflected', [1, 1.6, 2.2], 1.1),
  'umbrella-shoot-through': modifier('Umbrella, shoot-through', [1, 1.5, 2], 1.1),
  'umbrella-deep-diffused': modifier('Deep umbrella with diffuser', [1.5, 2, 2.5], 1.3),
  'softbox-one-diffuser': box('Softbox, front diffuser', [0.9, 1.25, 1.5], 0.6, 0.9),
  'softbox-two-diffusers': box('Softbox, front diffuser and baffle', [1.5, 2, 2.5], 0.6, 0.9),
  'octa-two-diffusers': modifier('Octagonal box, diffuser and baffle', [1.5, 2, 2.5], 1.2),
  'strip-two-diffusers': box('Strip box, diffuser and baffle', [1.5, 2, 2.5], 0.3, 1.2),
} as const satisfies Record<string, GenericModifier>;

/** What goes on top of a modifier; losses add. [lightingPractice] */
export const GENERIC_ADD_ONS = {
  'fabric-grid': { name: 'Fabric grid', lossStops: loss([0.3, 0.65, 1]) },
  'grid-30': { name: 'Honeycomb grid, 30°', lossStops: loss([0, 0.5, 1]) },
  'grid-20': { name: 'Honeycomb grid, 20°', lossStops: loss([1, 1.5, 2]) },
  'grid-10': { name: 'Honeycomb grid, 10°', lossStops: loss([2, 2.5, 3]) },
  'second-diffuser': { name: 'Extra diffuser', lossStops: loss([1, 1.5, 2]) },
} as const satisfies Record<string, GenericAddOn>;

type Range = readonly [low: number, middle: number, high: number];

function loss([low, middle, high]: Range): LossStops {
  return { low, middle, high };
}

function modifier(name: string, range: Range, diameterM: number): GenericModifier {
  return { name, lossStops: loss(range), widthM: diameterM, heightM: diameterM, round: true };
}

function box(name: string, range: Range, widthM: number, heightM: number): GenericModifier {
  return { name, lossStops: loss(range), widthM, heightM, round: false };
}
