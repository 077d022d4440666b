import type { Control, Given } from './control.ts';

const SUN = ['sunrise', 'sunset'];
const AS_TREES: readonly Given[] = [{ field: 'obstacle-kind', to: 'trees' }];

/** A wall of 20 m along the meridian, 60 m east of the pier head, at ten to seven. */
// prettier-ignore
export const GROUND_CONTROLS: readonly Control[] = [
  { field: 'obstacle-name', to: 'Customs shed', moves: 'spot-in-shadow', way: { reads: /Customs shed/ }, still: [...SUN, 'first-sun'] },
  { field: 'obstacle-height', to: '40', moves: 'first-sun', way: 'up', still: SUN },
  { field: 'obstacle-kind', to: 'trees', moves: 'obstacle-line', way: { reads: /^trees/ }, still: SUN },
  // Twenty metres down, the wall rises 3 m over the spot.
  { field: 'foot-elevation', to: '-14', moves: 'first-sun', way: 'down', still: SUN },
  { field: 'obstacle-origin', to: 'paced off', moves: 'obstacle-dated', way: { reads: /^paced off/ }, still: [...SUN, 'first-sun'] },
  // Its north end comes to the middle: what stands to the north-east is gone.
  { field: 'corner', within: '[data-corner="1"]', to: '45.6503, 13.76287', moves: 'first-sun', way: 'down', still: SUN },
  // 60 m off the sun's ray runs some 10 m high.
  { field: 'crown-base', given: AS_TREES, to: '18', moves: 'spot-in-shadow', way: { reads: /No obstacle/ }, still: SUN },
  { field: 'passes-in-leaf', given: AS_TREES, to: '80', moves: 'first-sun', way: 'down', still: SUN },
  { field: 'passes-bare', given: AS_TREES, to: '70', moves: 'obstacle-line', way: { reads: /70 % bare/ }, still: [...SUN, 'first-sun'] },
];

export const GROUND_OTHERS = {
  'new-corner': 'in a step of its own',
  'import-outlines': 'in a journey of its own',
  footprints: 'in a journey of its own',
  'footprints-address': 'in a journey of its own',
  'footprints-radius': 'in a journey of its own',
} as const;
