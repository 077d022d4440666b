import type { Control, Given } from './control.ts';
import { LIGHT, POWERS } from './controls-of-setup.data.ts';

export type Shelf = 'heads' | 'modifiers' | 'cameras' | 'lenses' | 'filters' | 'gels';

const item = (id: string): string => `[data-item="${id}"]`;
const KEY_HEAD = item('head-600');
const FILL_HEAD = item('head-400');
const UMBRELLA = item('umbrella');

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
    { field: 'diffuserStops', within: item('octabox'), add: -0.5, readOn: 'setup', given: [onSetup('modifier-key', 'octabox')], moves: 'power-key', way: { by: -0.5, within: ON_THE_DIAL }, still: [...LIGHT, 'power-fill'] },
    { field: 'baffleStops', within: item('octabox'), add: -0.5, readOn: 'setup', given: [onSetup('modifier-key', 'octabox'), onSetup('baffle-key')], moves: 'power-key', way: { by: -0.5, within: ON_THE_DIAL }, still: [...LIGHT, 'power-fill'] },
    { field: 'gridStops', within: item('reflector'), add: -0.5, readOn: 'setup', given: [onSetup('grid-key')], moves: 'power-key', way: { by: -0.5, within: ON_THE_DIAL }, still: [...LIGHT, 'power-fill'] },
  ],
  cameras: [
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
  ],
  gels: [
    { field: 'gel-stops', within: item('cto-full'), add: -0.5, readOn: 'setup', given: [onSetup('gel-key', 'cto-full')], moves: 'power-key', way: { by: -0.5, within: ON_THE_DIAL }, still: [...LIGHT, 'power-fill'] },
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
  generic: 'chooses what to add',
  thread: 'decides which filters fit the lens: the demo’s all do',
  'filter-thread': 'decides which lenses it fits: it fits the demo’s',
} as const;
