import type { Control, Given } from './control.ts';
import { LIGHT, POWERS } from './controls-of-setup.data.ts';

export type Shelf =
  | 'heads'
  | 'modifiers'
  | 'cameras'
  | 'lenses'
  | 'filters'
  | 'gels'
  | 'stands'
  | 'batteries';

const item = (id: string): string => `[data-item="${id}"]`;
const KEY_HEAD = item('head-600');
const FILL_HEAD = item('head-400');
const UMBRELLA = item('umbrella');
const LIGHT_STAND = item('stand-light');
const HEAVY_STAND = item('stand-heavy');
const KEY_BATTERY = item('battery-90');

const onSetup = (field: string, to?: string): Given => ({
  field,
  ...(to === undefined ? {} : { to }),
  on: 'setup',
});
const pin = (what: string): Given => ({ press: `[data-pin="${what}"]`, on: 'setup' });
const THROUGH_OCTABOX: Given = {
  field: 'reading-modifier',
  to: 'octabox',
  within: KEY_HEAD,
  isLook: true,
};
/** High-speed sync costs two stops: a hold that leaves them. */
const FASTER_THAN_SYNC = [
  onSetup('hold-stops', '−1'),
  pin('shutter'),
  onSetup('pinned-shutter', '1/1000'),
];

const A_SETTING: Given = { press: '[data-add-setting="reflector-0"]' };

const ON_THE_DIAL = 0.21;
const IN_HAND = 0.11;

// prettier-ignore
const reading = (field: string, to: string, way: Control['way']): Control => ({
  field, within: KEY_HEAD, to, isLook: true, moves: 'reading-guide-number', way,
});

// prettier-ignore
const switchOfReading = (field: string, way: Control['way']): Control => ({
  field, within: KEY_HEAD, given: [THROUGH_OCTABOX], isLook: true, moves: 'reading-against-rated', way,
});

/** The kit of the demo, read off the quartet's setup. */
// prettier-ignore
export const KIT_CONTROLS: Readonly<Record<Shelf, readonly Control[]>> = {
  heads: [
    { field: 'reading-modifier', within: KEY_HEAD, to: 'octabox', isLook: true, moves: 'reading-guide-number', way: 'changes' },
    reading('reading-f-number', '45', 'up'),
    reading('reading-iso', '200', 'down'),
    reading('reading-distance', '4', 'up'),
    reading('reading-ambient', '16', 'down'),
    reading('reading-power', '−1', 'up'),
    switchOfReading('reading-diffuser', 'changes'),
    switchOfReading('reading-baffle', 'changes'),
    switchOfReading('reading-grid', 'changes'),
    { field: 'owned', within: KEY_HEAD, to: '2', readOn: 'setup', given: [onSetup('head-count-key', '2')], moves: 'heads-head-600', way: 'goes', still: [...LIGHT, ...POWERS] },
    // A guide number √2 times as large is a stop.
    { field: 'guide-number', within: FILL_HEAD, to: '76.4', readOn: 'setup', moves: 'power-fill', way: { by: -1, within: ON_THE_DIAL }, still: [...LIGHT, 'power-key', 'meter-key'] },
    { field: 'energy', within: FILL_HEAD, to: '800', readOn: 'setup', given: [{ field: 'guide-number', within: FILL_HEAD, to: '' }], moves: 'power-fill', way: { by: -1, within: ON_THE_DIAL }, still: [...LIGHT, 'power-key'] },
    { field: 'scale', within: KEY_HEAD, to: 'percent', readOn: 'setup', moves: 'power-key', way: 'changes', still: [...LIGHT, 'power-fill', 'meter-key', 'in-hand'] },
    { field: 'full-number', within: KEY_HEAD, to: '9', readOn: 'setup', given: [{ field: 'scale', within: KEY_HEAD, to: 'numbered-stops' }], moves: 'power-key', way: { by: -1, within: 0.01 }, still: [...LIGHT, 'power-fill', 'meter-key', 'in-hand'] },
    { field: 'power-step', within: KEY_HEAD, to: '1', readOn: 'setup', moves: 'power-key', way: 'changes', still: [...LIGHT, 'in-hand'] },
    { field: 'min-power', within: KEY_HEAD, to: '−1', readOn: 'setup', moves: 'power-key', way: 'changes', still: LIGHT },
    { field: 'recycle', within: KEY_HEAD, to: '5', readOn: 'setup', moves: 'recycle', way: 'up', still: [...LIGHT, ...POWERS, 'in-hand'] },
    { field: 'pops', within: FILL_HEAD, to: '200', readOn: 'setup', moves: 'pops', way: 'down', still: [...LIGHT, ...POWERS, 'in-hand', 'recycle'] },
    { field: 'burst-pops', within: KEY_HEAD, to: '20', readOn: 'setup', given: [{ field: 'burst-pops', within: KEY_HEAD, to: '40' }], moves: 'burst-key', way: 'down', still: [...LIGHT, ...POWERS, 'in-hand', 'recycle'] },
    { field: 'burst-rest', within: KEY_HEAD, to: '120', readOn: 'setup', given: [{ field: 'burst-pops', within: KEY_HEAD, to: '10' }, { field: 'burst-rest', within: KEY_HEAD, to: '60' }], moves: 'frames-per-minute', way: 'down', still: [...LIGHT, ...POWERS, 'in-hand', 'recycle'] },
    { field: 'head-battery', within: KEY_HEAD, to: 'battery-40', moves: 'pops-expected', way: 'down' },
    { field: 'head-mass', within: KEY_HEAD, to: '4', moves: 'line-head-600', way: { reads: /, 4\.0 kg$/ } },
    { field: 'flash-kelvin', within: KEY_HEAD, to: '5000', moves: 'flash-colour', way: { reads: /^18 mired warmer$/ } },
    { field: 'duration-lowest', within: KEY_HEAD, to: '0.00005', readOn: 'setup', given: [{ field: 'duration', within: KEY_HEAD, to: '0.005' }], moves: 'clipped-key', way: 'changes', still: [...LIGHT, 'power-fill'] },
    { field: 'duration', within: KEY_HEAD, to: '0.01', readOn: 'setup', moves: 'power-key', way: 'up', still: [...LIGHT, 'power-fill'] },
    { field: 'hss', within: KEY_HEAD, readOn: 'setup', given: FASTER_THAN_SYNC, moves: 'problem', way: 'appears', still: LIGHT },
    { field: 'hss-loss', within: KEY_HEAD, add: 0.4, readOn: 'setup', given: FASTER_THAN_SYNC, moves: 'in-hand', way: { by: -0.4, within: IN_HAND }, still: LIGHT },
  ],
  modifiers: [
    { field: 'loss', within: UMBRELLA, add: 1, readOn: 'setup', moves: 'in-hand', way: { by: -1, within: IN_HAND }, still: [...LIGHT, 'power-key'] },
    { field: 'loss', within: UMBRELLA, add: 1, readOn: 'setup', moves: 'power-fill', way: { by: 1, within: ON_THE_DIAL }, still: [...LIGHT, 'power-key'] },
    { field: 'loss-spread', within: UMBRELLA, to: '1.5', readOn: 'setup', moves: 'origin-fill', way: 'up', still: [...LIGHT, ...POWERS, 'in-hand'] },
    { field: 'width', within: UMBRELLA, to: '3', readOn: 'setup', moves: 'power-fill', way: 'up', still: [...LIGHT, 'power-key'] },
    { field: 'height', within: UMBRELLA, to: '3', readOn: 'setup', moves: 'power-fill', way: 'up', still: [...LIGHT, 'power-key'] },
    { field: 'round', within: item('reflector'), moves: 'disc-diameter', way: 'up' },
    // 2 · 2 m · tan(half the beam): 90° is 4 m, 40° 1.46 m.
    { field: 'beam', within: item('reflector'), to: '90', moves: 'beam-across', way: { reads: /^4\.0 m$/ } },
    { field: 'grid-beam', within: item('reflector'), to: '40', moves: 'grid-beam-across', way: { reads: /^1\.46 m$/ } },
    { field: 'modifier-mass', within: item('reflector'), to: '2', moves: 'line-reflector', way: { reads: /, 2\.0 kg$/ } },
    { field: 'setting-beam', within: item('reflector'), to: '90', given: [A_SETTING], moves: 'setting-line', way: { reads: /4\.0 m wide/ } },
    { field: 'setting-stops', within: item('reflector'), to: '2', given: [A_SETTING], moves: 'setting-line', way: { by: -2, within: 0.05 } },
    { field: 'diffuserStops', within: item('octabox'), add: -0.5, readOn: 'setup', given: [onSetup('modifier-key', 'octabox')], moves: 'power-key', way: { by: -0.5, within: ON_THE_DIAL }, still: [...LIGHT, 'power-fill'] },
    { field: 'baffleStops', within: item('octabox'), add: -0.5, readOn: 'setup', given: [onSetup('modifier-key', 'octabox'), onSetup('baffle-key')], moves: 'power-key', way: { by: -0.5, within: ON_THE_DIAL }, still: [...LIGHT, 'power-fill'] },
    { field: 'gridStops', within: item('reflector'), add: -0.5, readOn: 'setup', given: [onSetup('grid-key')], moves: 'power-key', way: { by: -0.5, within: ON_THE_DIAL }, still: [...LIGHT, 'power-fill'] },
  ],
  cameras: [
    // 1e6/2500 − 1e6/10000 = 300 mired; from 2000 K 400, to 8000 K 275.
    { field: 'autofocus-limit', to: '−4', moves: 'autofocus-as-settings', way: 'changes' },
    { field: 'min-kelvin', to: '2000', moves: 'white-range', way: { by: 100, within: 1 } },
    { field: 'max-kelvin', to: '8000', moves: 'white-range', way: { by: -25, within: 1 } },
    { field: 'camera-mass', to: '1.2', moves: 'line-camera', way: { reads: /, 1\.2 kg$/ } },
    { field: 'sensor-width', to: '30', readOn: 'setup', moves: 'sensor', way: 'appears', still: [...LIGHT, ...POWERS, 'in-hand'] },
    { field: 'sensor-height', to: '20', readOn: 'setup', moves: 'sensor', way: 'appears', still: [...LIGHT, ...POWERS, 'in-hand'] },
    // A stop of sync is a stop of reach.
    { field: 'sync-shutter', to: '1/500', readOn: 'setup', moves: 'in-hand', way: { by: 1, within: IN_HAND }, still: LIGHT },
    { field: 'fastest-shutter', to: '1/500', readOn: 'setup', given: FASTER_THAN_SYNC, moves: 'problem', way: 'appears', still: LIGHT },
    { field: 'slowest-shutter', to: '1/60', readOn: 'setup', given: [onSetup('motion', 'still')], moves: 'slowest-allowed', way: { by: -1, within: 0.1 }, still: [...LIGHT, 'in-hand'] },
    { field: 'base-iso', to: '200', readOn: 'setup', moves: 'iso', way: 'up', still: LIGHT },
    { field: 'max-iso', to: '200', readOn: 'setup', given: [onSetup('start-clock', '21:00')], moves: 'iso', way: { reads: /^(ISO (100|125|160|200)|)$/ }, still: LIGHT },
    { field: 'step', to: 'half', readOn: 'setup', moves: 'aperture', way: 'changes', still: [...LIGHT, 'shutter'] },
  ],
  lenses: [
    { field: 'lens-mass', within: item('lens-24-70'), to: '1.5', moves: 'line-lens-24-70', way: { reads: /, 1\.5 kg$/ } },
    { field: 'min-focal', to: '40', readOn: 'setup', moves: 'focal-length', way: 'appears', still: [...LIGHT, ...POWERS, 'in-hand'] },
    { field: 'max-focal', to: '30', readOn: 'setup', moves: 'focal-length', way: 'appears', still: [...LIGHT, ...POWERS, 'in-hand'] },
    { field: 'min-f-number', to: '8', readOn: 'setup', moves: 'aperture', way: 'up', still: [...LIGHT, ...POWERS, 'in-hand'] },
    { field: 'max-f-number', to: '4', readOn: 'setup', given: [onSetup('wish-aperture', '9')], moves: 'aperture', way: 'down', still: [...LIGHT, 'in-hand'] },
    { field: 'leaf', readOn: 'setup', moves: 'in-hand', way: { by: 1, within: IN_HAND }, still: LIGHT },
    { field: 'leaf-shutter', to: '1/1000', readOn: 'setup', given: [{ field: 'leaf' }], moves: 'in-hand', way: { by: 1, within: IN_HAND }, still: LIGHT },
  ],
  filters: [
    { field: 'filter-kind', within: item('nd-3'), to: 'colour', readOn: 'setup', moves: 'filters', way: 'changes', still: LIGHT },
    { field: 'engraving', within: item('nd-3'), to: 'ND8', readOn: 'setup', moves: 'filters', way: 'changes', still: [...LIGHT, ...POWERS, 'in-hand'] },
    // ND is no fix: what the lights have in hand stays.
    { field: 'filter-stops', within: item('nd-3'), to: '4', readOn: 'setup', moves: 'filters', way: 'changes', still: [...LIGHT, 'in-hand'] },
    { field: 'filter-max-stops', within: item('nd-3'), to: '8', given: [{ field: 'filter-kind', within: item('nd-3'), to: 'variable-nd' }], moves: 'strongest-nd-3', way: 'changes' },
    { field: 'filter-mired', within: item('blue-80a'), to: '−100', readOn: 'setup', given: [pin('filters'), onSetup('filter-blue-80a')], moves: 'stack-colour', way: { reads: /^100 mired bluer$/ }, still: [...LIGHT, ...POWERS, 'in-hand'] },
    { field: 'filter-green', within: item('blue-80a'), to: '−0.5', readOn: 'setup', given: [pin('filters'), onSetup('filter-blue-80a')], moves: 'stack-colour', way: { reads: /, 0\.5 stops of green less$/ }, still: [...LIGHT, ...POWERS, 'in-hand'] },
    { field: 'filter-ring', within: item('blue-80a'), to: '9', readOn: 'setup', given: [pin('filters'), onSetup('filter-blue-80a')], moves: 'stack-depth', way: { by: 4, within: 0 }, still: [...LIGHT, ...POWERS, 'in-hand'] },
  ],
  stands: [
    { field: 'stand-owned', within: LIGHT_STAND, to: '3', moves: 'line-stand-light', way: 'up' },
    { field: 'stand-height', within: LIGHT_STAND, to: '3.5', moves: 'line-stand-light', way: { reads: /up to 3\.5 m/ } },
    { field: 'stand-gust', within: LIGHT_STAND, to: '6', moves: 'line-stand-light', way: { reads: /limit 6 m\/s/ } },
    { field: 'stand-spread', within: HEAVY_STAND, to: '0.8', moves: 'tipping-gust', way: 'up' },
    { field: 'stand-legs', within: HEAVY_STAND, to: '4', moves: 'tipping-gust', way: 'up' },
    { field: 'stand-mass', within: HEAVY_STAND, to: '6', moves: 'tipping-gust', way: 'up' },
    // The force goes with the square of the gust; what stands comes off.
    { field: 'ballast-gust', within: HEAVY_STAND, to: '10', isLook: true, moves: 'stand-ballast', way: { reads: /\d+ kg .* gusts up to 10\.0 m\/s/ } },
    { field: 'ballast-modifier', within: HEAVY_STAND, to: 'reflector', isLook: true, moves: 'tipping-gust', way: 'up' },
    { field: 'ballast-height', within: HEAVY_STAND, to: '3.5', isLook: true, moves: 'tipping-gust', way: 'down' },
  ],
  batteries: [
    { field: 'battery-owned', within: KEY_BATTERY, to: '3', readOn: 'setup', moves: 'batteries', way: { reads: /you own 3/ }, still: [...LIGHT, ...POWERS, 'in-hand'] },
    { field: 'battery-energy', within: KEY_BATTERY, to: '120', moves: 'line-battery-90', way: { reads: /120 Wh each/ } },
    { field: 'battery-mass', within: KEY_BATTERY, to: '1.4', moves: 'line-battery-90', way: { reads: /, 1\.4 kg$/ } },
  ],
  gels: [
    { field: 'gel-stops', within: item('cto-full'), add: -0.5, readOn: 'setup', given: [onSetup('gel-key', 'cto-full')], moves: 'power-key', way: { by: -0.5, within: ON_THE_DIAL }, still: [...LIGHT, 'power-fill'] },
    { field: 'gel-green', within: item('cto-full'), to: '0.5', readOn: 'setup', given: [onSetup('gel-key', 'cto-full')], moves: 'white-balance', way: 'changes', still: [...LIGHT, ...POWERS, 'in-hand'] },
    { field: 'gel-mired', within: item('cto-full'), to: '81', readOn: 'setup', given: [onSetup('gel-key', 'cto-full')], moves: 'white-balance', way: 'changes', still: [...LIGHT, ...POWERS, 'in-hand'] },
  ],
};

const NAME = 'a name: it moves no figure';

export const KIT_OTHERS = {
  condition: 'stands in the bar of every screen',
  'heads-name': NAME,
  'modifiers-name': NAME,
  'cameras-name': NAME,
  'lenses-name': NAME,
  'filters-name': NAME,
  'gels-name': NAME,
  'stands-name': NAME,
  'batteries-name': NAME,
  'setting-name': NAME,
  generic: 'chooses what to add',
  thread: 'decides which filters fit the lens: the demo’s all do',
  'filter-thread': 'decides which lenses it fits: it fits the demo’s',
} as const;
