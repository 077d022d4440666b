import type { Control } from './control.ts';

const SKY = ['dark-ev', 'patch-ev', 'mean-ev', 'bright-ev'];
const CLOCKS = ['sunrise', 'sunset'];
const AMBIENT = ['ambient-ev', 'incident-ev'];
const NORTH_WEST = '[data-skyline-point="at-345"]';
const NORTH_EAST = '[data-skyline-point="at-70"]';

/** The pier head at the start of its setup. */
// prettier-ignore
export const SCOUT_CONTROLS: readonly Control[] = [
  { field: 'spot-name', to: 'Pier end', moves: 'spot-name', way: 'changes', still: [...SKY, ...CLOCKS] },
  // One degree of longitude is four minutes.
  { field: 'coordinates', to: '45.6503 N, 12.7621 E', moves: 'sunset', way: { by: 4, within: 1 }, still: ['camera-faces', 'zone'] },
  { field: 'elevation', to: '2000', moves: 'mean-ev', way: 'up', still: CLOCKS },

  { field: 'bearing', to: '30', moves: 'patch-ev', way: 'down', still: [...CLOCKS, 'sun-now', 'field-of-view'] },
  { field: 'tilt', to: '15', moves: 'dark-ev', way: 'down', still: [...CLOCKS, 'sun-now', 'field-of-view'] },
  // Of a frame 36 mm wide: 2·atan(18/60) = 33°.
  { field: 'focal-length', to: '60', moves: 'field-of-view', way: { reads: /^sees 33°/ }, still: [...CLOCKS, 'sun-now'] },
  { field: 'orientation', to: 'portrait', moves: 'field-of-view', way: 'down', still: [...CLOCKS, 'sun-now'] },
  { field: 'camera-distance', to: '7', readOn: 'setup', moves: 'camera', way: { reads: /^7\.0 m away/ }, still: [...AMBIENT, 'mean-ev'] },
  { field: 'camera-height', to: '1', readOn: 'setup', moves: 'camera', way: { reads: / 1\.0 m high/ }, still: [...AMBIENT, 'mean-ev'] },
  { field: 'sensor-format', to: '4', moves: 'field-of-view', way: 'changes', still: [...CLOCKS, 'sun-now'] },
  { field: 'sensor-width', to: '24', given: [{ field: 'sensor-format', to: 'own', isLook: true }], moves: 'field-of-view', way: 'down', still: [...CLOCKS, 'sun-now'] },
  { field: 'sensor-height', to: '16', given: [{ field: 'sensor-format', to: 'own', isLook: true }], moves: 'field-of-view', way: 'changes', still: [...CLOCKS, 'sun-now'] },

  { field: 'skyline-altitude', within: NORTH_WEST, to: '12', moves: 'sun-leaves', way: 'down', still: [...CLOCKS, 'first-sun', 'sun-now'] },
  { field: 'skyline-altitude', within: NORTH_WEST, to: '12', moves: 'mean-ev', way: 'down', still: [...CLOCKS, 'first-sun', 'sun-now'] },
  { field: 'skyline-altitude', within: NORTH_EAST, to: '12', moves: 'first-sun', way: 'up', still: [...SKY, ...CLOCKS, 'sun-leaves'] },
  { field: 'skyline-azimuth', within: NORTH_EAST, to: '60', moves: 'first-sun', way: 'down', still: [...SKY, ...CLOCKS, 'sun-leaves'] },
  { field: 'skyline-origin', to: 'paced off', moves: 'skyline-origin', way: 'changes', still: SKY },
  { field: 'skyline-dated', to: '2027-05-01', moves: 'source-trace', way: { reads: /1 May 2027/ }, still: SKY },

  { field: 'ground-reflectance', to: '0.9', readOn: 'setup', moves: 'ambient-ev', way: 'up', still: SKY },
  { field: 'surface', to: 'fresh snow', readOn: 'setup', moves: 'ambient-ev', way: 'up', still: SKY },
  { field: 'walk-in', to: '25', moves: 'ground-lines', way: 'changes', still: SKY },
  { field: 'permission', to: 'refused', moves: 'ground-lines', way: 'changes', still: SKY },
  { field: 'foot-traffic', to: 'busy', moves: 'ground-lines', way: 'changes', still: SKY },
  { field: 'shelter', to: 'full', moves: 'ground-lines', way: 'changes', still: SKY },
  { field: 'permission-number', to: 'K 17', moves: 'ground-lines', way: 'changes', still: SKY },
  { field: 'permission-conditions', to: 'no stands on the rails', moves: 'ground-lines', way: 'changes', still: SKY },
  { field: 'permission-from', to: '2027-05-15', given: [{ field: 'permission', to: 'granted' }], moves: 'permission-gap', way: 'appears', still: SKY },
  { field: 'permission-until', to: '2027-05-13', given: [{ field: 'permission', to: 'granted' }], moves: 'permission-gap', way: 'appears', still: SKY },
  ...['water', 'traffic', 'height', 'lonely'].map(
    (hazard): Control => ({ field: `hazard-${hazard}`, moves: 'hazards', way: 'changes', still: SKY }),
  ),
  ...['ground', 'access', 'parking', 'toilets', 'permission', 'foot-traffic', 'shelter', 'wind', 'power'].map(
    (about): Control => ({ field: `${about}-note`, to: 'Ask the keeper', moves: 'ground-lines', way: 'changes', still: SKY }),
  ),
  { field: 'hazards-note', to: 'Slippery when wet', moves: 'hazards', way: 'changes', still: SKY },
  { field: 'alignment-body', to: 'moon', isLook: true, moves: 'alignment-asked', way: 'changes', still: SKY },
  { field: 'alignment-across', to: '20', isLook: true, moves: 'alignment-asked', way: 'changes', still: SKY },
  { field: 'alignment-up', to: '10', isLook: true, moves: 'alignment-asked', way: 'changes', still: SKY },
  { field: 'alignment-tolerance', to: '2', isLook: true, moves: 'alignment-asked', way: 'changes', still: SKY },
  { field: 'alignment-from', to: '2027-06-01', isLook: true, moves: 'alignment-asked', way: 'changes', still: SKY },
  { field: 'condition', to: 'clear', moves: 'patch-ev', way: 'changes', still: [...CLOCKS, 'sun-now', 'camera-faces'] },
  { field: 'spot', to: 'karst', isLook: true, moves: 'spot-name', way: 'changes' },
];

/** With the minute chosen, the zone is only what the clocks are called: one hour less in London. */
// prettier-ignore
export const ZONE_CONTROLS: readonly Control[] = [
  { field: 'zone', to: 'Europe/London', moves: 'sunset', way: { by: -60, within: 0 }, still: [...SKY, 'sun-now', 'camera-faces', 'field-of-view'] },
  { field: 'zone', to: 'Europe/London', moves: 'minute', way: { by: -60, within: 0 }, still: [...SKY, 'sun-now', 'camera-faces', 'field-of-view'] },
];

export const SCOUT_OTHERS = {
  zone: 'in a step of its own',
  minute: 'chooses the minute; keys, not a text',
  'alignment-point': 'the two numbers beside it, by pointer and keys',
  'elevation-files': 'a file, in a journey of its own',
  'elevation-network': 'asks the network, in a journey of its own',
  'elevation-address': 'asks the network, in a journey of its own',
  'map-tiles': 'what the map shows, no figure',
  'tile-address': 'what the map shows, no figure',
  'tile-attribution': 'what the map shows, no figure',
  'map-search': 'what the map shows, no figure',
  'local-map-file': 'what the map shows, no figure',
  'local-map-shown': 'what the map shows, no figure',
} as const;
