import type { Control } from './control.ts';

/** What the sky and the ambient are; no head, dial or filter moves them. */
export const LIGHT = ['dark-ev', 'patch-ev', 'mean-ev', 'bright-ev', 'ambient-ev', 'incident-ev'];
export const POWERS = ['power-key', 'power-fill'];
export const SETTINGS = ['shutter', 'aperture', 'iso', 'filters'];

/** Two figures to a tenth and a head that clicks in tenths. */
const ON_THE_DIAL = 0.21;
const IN_HAND = 0.11;

/** Makes the demo's quartet a setup with room on every side, whatever it is tuned to. */
export const ROOMY: Readonly<Record<string, string>> = {
  'start-clock': '20:00',
  'hold-stops': '1',
  'unlit-under': '2',
  'wish-aperture': '3.2',
  'distance-key': '2.9',
  'angle-key': '30',
  'height-key': '2.3',
  'stops-fill': '−1.6',
  'distance-fill': '2.8',
  'angle-fill': '0',
  'height-fill': '2.3',
  people: '4',
  spacing: '0.7',
  'spread-limit': '0.7',
};

/** Of that setup. */
// prettier-ignore
export const SETUP_CONTROLS: readonly Control[] = [
  { field: 'hold-stops', to: '2', moves: 'power-key', way: { by: 1, within: ON_THE_DIAL }, still: LIGHT },
  { field: 'hold-stops', to: '2', moves: 'in-hand', way: { by: -1, within: IN_HAND }, still: LIGHT },
  { field: 'hold-under', to: 'frame', moves: 'in-hand', way: 'down', still: LIGHT },
  { field: 'unlit-under', to: '8', moves: 'problem', way: 'appears', still: LIGHT },
  { field: 'start-clock', to: '20:20', moves: 'patch-ev', way: 'down', still: ['camera', 'sync'] },
  { field: 'duration', to: '25', moves: 'where-and-when', way: 'changes', still: [...LIGHT, ...POWERS, 'in-hand'] },
  { field: 'shaded', given: [{ field: 'bearing', to: '100' }, { field: 'start-clock', to: '18:00' }], moves: 'ambient-shaded-ev', way: 'appears', still: LIGHT },

  { field: 'role-fill', to: 'rim', moves: 'fill-stops', way: 'goes', still: LIGHT },
  { field: 'role-key', to: 'background', moves: 'meter-total', way: 'changes', still: LIGHT },
  { field: 'stops-fill', to: '−2.6', moves: 'power-fill', way: { by: -1, within: ON_THE_DIAL }, still: [...LIGHT, ...SETTINGS] },
  { field: 'stops-key', to: '−0.5', moves: 'power-key', way: 'down', still: [...LIGHT, 'power-fill'] },
  { field: 'head-key', to: 'head-400', moves: 'power-key', way: 'up', still: [...LIGHT, 'power-fill', 'meter-key'] },
  { field: 'head-fill', to: 'head-600', moves: 'power-fill', way: 'down', still: [...LIGHT, 'power-key', 'meter-fill'] },
  { field: 'head-count-key', to: '2', moves: 'power-key', way: { by: -1, within: ON_THE_DIAL }, still: [...LIGHT, ...SETTINGS, 'power-fill'] },
  { field: 'head-count-fill', to: '2', moves: 'power-fill', way: { by: -1, within: ON_THE_DIAL }, still: [...LIGHT, ...SETTINGS, 'power-key'] },
  { field: 'modifier-key', to: 'octabox', moves: 'power-key', way: 'up', still: [...LIGHT, 'power-fill'] },
  { field: 'modifier-fill', to: 'reflector', moves: 'power-fill', way: 'down', still: [...LIGHT, 'power-key'] },
  { field: 'grid-key', moves: 'power-key', way: 'up', still: [...LIGHT, 'power-fill', 'meter-key'] },
  { field: 'diffuser-key', given: [{ field: 'modifier-key', to: 'octabox' }], moves: 'power-key', way: 'down', still: [...LIGHT, 'power-fill'] },
  { field: 'baffle-key', given: [{ field: 'modifier-key', to: 'octabox' }], moves: 'power-key', way: 'up', still: [...LIGHT, 'power-fill'] },
  { field: 'gel-key', to: 'cto-full', moves: 'power-key', way: { by: 1.09, within: ON_THE_DIAL }, still: [...LIGHT, 'power-fill'] },
  { field: 'gel-fill', to: 'cto-half', moves: 'power-fill', way: { by: 0.45, within: ON_THE_DIAL }, still: [...LIGHT, 'power-key'] },
  // Half the distance of a small source: two stops, and undo doubles it again.
  { field: 'distance-key', to: '1.45', moves: 'power-key', way: { by: -2, within: ON_THE_DIAL }, still: [...LIGHT, 'power-fill', 'meter-key'] },
  // Of a disc 0.55 m in radius: log2((1.4² + 0.55²)/(2.8² + 0.55²)) = −1.85.
  { field: 'distance-fill', to: '1.4', moves: 'power-fill', way: { by: -1.85, within: ON_THE_DIAL }, still: LIGHT },
  { field: 'angle-key', to: '60', moves: 'ends-key', way: 'changes', still: [...LIGHT, ...POWERS] },
  { field: 'angle-fill', to: '40', moves: 'ends-fill', way: 'changes', still: [...LIGHT, 'power-fill'] },
  { field: 'height-key', to: '4', moves: 'ends-key', way: 'changes', still: [...LIGHT, ...POWERS] },
  { field: 'height-fill', to: '4', given: [{ field: 'angle-fill', to: '40' }], moves: 'ends-fill', way: 'changes', still: [...LIGHT, ...POWERS] },
  { field: 'second-gel-key', to: 'cto-half', given: [{ field: 'gel-key', to: 'cto-full' }], moves: 'power-key', way: { by: 0.45, within: ON_THE_DIAL }, still: [...LIGHT, 'power-fill'] },
  { field: 'second-gel-fill', to: 'cto-full', moves: 'power-fill', way: { by: 1.09, within: ON_THE_DIAL }, still: [...LIGHT, 'power-key'] },
  // A reflector of 65° is even to 32.5° and loses a stop per 8.1° beyond; an umbrella of 100° to 50°, a stop per 12.5°.
  { field: 'feather-key', to: '40.6', moves: 'power-key', way: { by: 1, within: ON_THE_DIAL }, still: [...LIGHT, 'power-fill', 'meter-key'] },
  { field: 'feather-fill', to: '56.25', moves: 'power-fill', way: { by: 0.5, within: ON_THE_DIAL }, still: [...LIGHT, 'meter-fill'] },
  { field: 'stand-key', to: 'stand-light', given: [{ field: 'gust', to: '6' }], moves: 'wind-key', way: { reads: /^(at least \d+ kg on the windward leg for|its own weight holds it in) gusts up to 6\.0 m\/s, estimate, not an approval$/ }, still: [...LIGHT, ...POWERS, 'in-hand'] },
  { field: 'stand-fill', to: 'stand-heavy', moves: 'wind-fill', way: { reads: /not known/ }, still: [...LIGHT, ...POWERS, 'in-hand'] },
  { field: 'gust', to: '9', given: [{ field: 'stand-key', to: 'stand-light' }], moves: 'blocked-key', way: 'appears', still: [...LIGHT, 'power-fill', 'in-hand'] },
  { field: 'bounced-key', moves: 'bounce-key', way: 'appears', still: LIGHT },
  { field: 'bounced-fill', moves: 'bounce-fill', way: 'appears', still: LIGHT },
  ...['key', 'fill'].flatMap((light): Control[] => {
    const given = [{ field: `bounced-${light}` }];
    const moves = `bounce-${light}`;
    return [
      // Half of what it reflects is a stop; the figure says how far under direct.
      { field: `bounce-reflectance-${light}`, to: '40', given, moves, way: { by: 1, within: 0.11 }, still: LIGHT },
      { field: `bounce-colour-${light}`, to: 'b06040', given, moves: `bounce-tint-${light}`, way: { reads: /mired warmer/ }, still: LIGHT },
      { field: `bounce-head-${light}`, to: '2', given, moves, way: 'up', still: LIGHT },
      { field: `bounce-incidence-${light}`, to: '70', given, moves, way: 'changes', still: LIGHT },
      { field: `bounce-exit-${light}`, to: '60', given, moves, way: 'up', still: LIGHT },
      { field: `bounce-panel-${light}`, to: '0.5', given, moves, way: 'up', still: LIGHT },
    ];
  }),
  { field: 'pinned-power-key', to: '8', given: [{ press: '[data-pin="power-key"]' }], moves: 'problem', way: { reads: /^Short by \d\.\d, the key/ }, still: LIGHT },

  { field: 'bearing', to: '30', moves: 'patch-ev', way: 'down', still: ['sync', 'slowest-allowed'] },
  { field: 'tilt', to: '15', moves: 'dark-ev', way: 'down', still: ['ambient-ev', 'incident-ev'] },
  { field: 'focal-length', to: '60', moves: 'mean-ev', way: 'changes', still: ['ambient-ev', 'incident-ev'] },
  { field: 'camera-distance', to: '7', moves: 'camera', way: { reads: /^7\.0 m away/ }, still: ['mean-ev', 'ambient-ev', 'incident-ev'] },
  { field: 'camera-height', to: '1', moves: 'camera', way: { reads: / 1\.0 m high/ }, still: ['mean-ev', 'ambient-ev', 'incident-ev'] },
  { field: 'orientation', to: 'portrait', moves: 'camera', way: { reads: /portrait/ }, still: ['ambient-ev', 'incident-ev'] },
  { field: 'patch-x', to: '−30', given: [{ press: '[data-own-patch]' }], moves: 'patch-ev', way: 'changes', still: ['mean-ev', 'ambient-ev'] },
  { field: 'patch-y', to: '40', given: [{ press: '[data-own-patch]' }], moves: 'patch-ev', way: 'down', still: ['mean-ev', 'ambient-ev'] },
  { field: 'patch-width', to: '20', given: [{ press: '[data-own-patch]' }], moves: 'patch-place', way: { by: 10, within: 0 }, still: ['mean-ev', 'ambient-ev'] },
  { field: 'patch-height', to: '20', given: [{ press: '[data-own-patch]' }], moves: 'patch-place', way: 'changes', still: ['mean-ev', 'ambient-ev'] },

  { field: 'people', to: '2', moves: 'tone-farthest-face-key', way: 'up', still: ['mean-ev', 'ambient-ev'] },
  { field: 'spacing', to: '1.2', moves: 'tone-farthest-face-key', way: 'down', still: ['mean-ev', 'ambient-ev'] },
  { field: 'rows', to: '2', moves: 'sharp-rows', way: 'appears', still: ['mean-ev', 'ambient-ev'] },
  { field: 'row-spacing', to: '2', given: [{ field: 'rows', to: '2' }], moves: 'sharp-rows', way: { reads: /the last row at 7\.1 m/ }, still: ['mean-ev', 'ambient-ev'] },
  { field: 'pose', to: 'lying', moves: 'feet-key', way: 'changes', still: [...LIGHT, ...POWERS, 'in-hand'] },
  { field: 'face-height', to: '1.2', moves: 'patch-place', way: 'changes', still: ['mean-ev'] },
  { field: 'spread-limit', to: '2', moves: 'spread-key', way: 'goes', still: [...LIGHT, ...POWERS, 'in-hand'] },
  { field: 'motion', to: 'walking', moves: 'slowest-allowed', way: 'down', still: [...LIGHT, ...POWERS, 'in-hand'] },
  { field: 'frames', to: '600', moves: 'batteries', way: 'changes', still: [...LIGHT, ...POWERS, 'in-hand', 'pops'] },
  { field: 'air-temperature', to: '−10', moves: 'pops', way: 'down', still: [...LIGHT, ...POWERS, 'in-hand', 'recycle'] },
  { field: 'tripod', given: [{ field: 'motion', to: 'still' }], moves: 'slowest-allowed', way: { by: 1, within: 0.1 }, still: [...LIGHT, ...POWERS, 'in-hand'] },
  { field: 'lens', to: 'lens-85', moves: 'focal-length', way: 'appears', still: [...LIGHT, ...POWERS, 'in-hand'] },
  { field: 'wish-aperture', to: '9', moves: 'aperture', way: 'up', still: [...LIGHT, ...POWERS, 'in-hand', 'shutter'] },

  { field: 'pinned-shutter', to: '1/200', given: [{ press: '[data-pin="shutter"]' }], moves: 'in-hand', way: { by: -0.33, within: IN_HAND }, still: LIGHT },
  { field: 'pinned-aperture', to: 'f/9', given: [{ press: '[data-pin="aperture"]' }], moves: 'aperture', way: { reads: /^f\/9$/ }, still: [...LIGHT, ...POWERS, 'in-hand', 'shutter'] },
  { field: 'pinned-iso', to: '200', given: [{ press: '[data-pin="shutter"]' }, { press: '[data-pin="iso"]' }], moves: 'iso', way: { by: 100, within: 0 }, still: [...LIGHT, ...POWERS, 'in-hand', 'shutter'] },
  { field: 'filter-nd-2', given: [{ press: '[data-pin="filters"]' }], moves: 'filters', way: 'changes', still: [...LIGHT, ...POWERS, 'in-hand', 'shutter'] },
  { field: 'filter-nd-3', given: [{ press: '[data-pin="filters"]' }], moves: 'filters', way: 'changes', still: [...LIGHT, ...POWERS, 'in-hand', 'shutter'] },

  { field: 'filter-polariser', given: [{ press: '[data-pin="filters"]' }], moves: 'filters', way: 'changes', still: LIGHT },
  { field: 'filter-grad-2', given: [{ press: '[data-pin="filters"]' }], moves: 'graduation', way: 'appears', still: LIGHT },
  { field: 'filter-blue-80a', given: [{ press: '[data-pin="filters"]' }], moves: 'stack-colour', way: { reads: /^131 mired bluer$/ }, still: [...LIGHT, 'in-hand'] },
  { field: 'graduation', to: '20', given: [{ press: '[data-pin="filters"]' }, { field: 'filter-grad-2' }], moves: 'graduation', way: { reads: /^from 8 % over the centre up to 33 % over the centre$/ }, still: LIGHT },
  // 1e6/3200 − 1e6/5600 = 134.
  { field: 'white-balance-kelvin', to: '3200', moves: 'look-key', way: { reads: /^134 mired bluer$/ }, still: [...LIGHT, ...POWERS, 'in-hand'] },
  { field: 'white-balance-tint', to: '20', moves: 'look-key', way: { reads: /20 more magenta$/ }, still: [...LIGHT, ...POWERS, 'in-hand'] },
  { field: 'ambient-kelvin', to: '3200', moves: 'look-ambient', way: { reads: /^134 mired warmer$/ }, still: [...LIGHT, ...POWERS, 'in-hand', 'look-key'] },
  { field: 'bluer-mired', to: '200', isLook: true, moves: 'pair-0', way: 'changes', still: [...LIGHT, ...POWERS, 'in-hand', 'look-key'] },
  { field: 'setup-name', to: 'Four and the sea', moves: 'setup-name', way: 'changes', still: [...LIGHT, ...POWERS, 'in-hand'] },
  { field: 'condition', to: 'heavy-overcast', moves: 'mean-ev', way: 'down', still: ['camera', 'sync'] },
];

/** Fields of the Setup screen that have a journey step of their own or move no figure. */
export const SETUP_OTHERS = {
  setup: 'chooses what is looked at',
  minute: 'chooses the minute; keys, not a text',
  camera: 'the demo has one; the kit’s camera fields move its figures',
  'new-setup-spot': 'only says where the next setup will stand',
} as const;
