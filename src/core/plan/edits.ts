import type { Kit, KitShelf } from './kit.ts';
import type { Light, Setup } from './setup-schema.ts';
import type { Shoot, Spot } from './shoot.ts';
import type { ShootFraming } from './spot-schema.ts';

/** A change written on an immer draft; it reads no clock and makes no ids. */
export type Edit<Document> = (draft: Document) => void;

type Fields<Entry> = { -readonly [Key in keyof Entry]?: Entry[Key] };

const merge = <Entry extends object>(entry: Entry | undefined, fields: Fields<Entry>): void => {
  if (entry !== undefined) Object.assign(entry, fields);
};

/** Documents are JSON; what is put in must not stay in the caller's hands. */
const copyOf = <Entry>(entry: Entry): Entry => JSON.parse(JSON.stringify(entry)) as Entry;

export const editShoot =
  (fields: Fields<Pick<Shoot, 'title' | 'date' | 'condition'>>): Edit<Shoot> =>
  (shoot) =>
    void Object.assign(shoot, fields);

export const addSpot =
  (id: string, spot: Spot): Edit<Shoot> =>
  (shoot) => {
    shoot.spots[id] = copyOf(spot);
  };

export const editSpot =
  (id: string, fields: Fields<Spot>): Edit<Shoot> =>
  (shoot) =>
    merge(shoot.spots[id], fields);

/** A spot goes with its setups. */
export const removeSpot =
  (id: string): Edit<Shoot> =>
  (shoot) => {
    delete shoot.spots[id];
    for (const [setupId, setup] of Object.entries(shoot.setups))
      if (setup.spotId === id) delete shoot.setups[setupId];
  };

export const editSpotFraming =
  (id: string, fields: Fields<ShootFraming>): Edit<Shoot> =>
  (shoot) =>
    merge(shoot.spots[id]?.framing, fields);

/** Changes the setup's own framing, which becomes a copy of its spot's first where it has none. */
export const editSetupFraming =
  (id: string, fields: Fields<ShootFraming>): Edit<Shoot> =>
  (shoot) => {
    const setup = shoot.setups[id];
    const spot = setup && shoot.spots[setup.spotId];
    if (setup === undefined || spot === undefined) return;
    setup.framing ??= { ...spot.framing };
    Object.assign(setup.framing, fields);
  };

export const addSetup =
  (id: string, setup: Setup): Edit<Shoot> =>
  (shoot) => {
    shoot.setups[id] = copyOf(setup);
  };

export const editSetup =
  (id: string, fields: Fields<Setup>): Edit<Shoot> =>
  (shoot) =>
    merge(shoot.setups[id], fields);

export const removeSetup =
  (id: string): Edit<Shoot> =>
  (shoot) => {
    delete shoot.setups[id];
  };

export const addLight =
  (setupId: string, lightId: string, light: Light): Edit<Shoot> =>
  (shoot) => {
    const setup = shoot.setups[setupId];
    if (setup !== undefined) setup.lights[lightId] = copyOf(light);
  };

export const editLight =
  (setupId: string, lightId: string, fields: Fields<Light>): Edit<Shoot> =>
  (shoot) =>
    merge(shoot.setups[setupId]?.lights[lightId], fields);

export const removeLight =
  (setupId: string, lightId: string): Edit<Shoot> =>
  (shoot) => {
    const setup = shoot.setups[setupId];
    if (setup !== undefined) delete setup.lights[lightId];
  };

/** Several edits as one step. */
export const together =
  <Document>(...edits: readonly Edit<Document>[]): Edit<Document> =>
  (draft) => {
    for (const edit of edits) edit(draft);
  };

export const putKitItem =
  <Shelf extends KitShelf>(shelf: Shelf, id: string, item: Kit[Shelf][string]): Edit<Kit> =>
  (kit) => {
    (kit[shelf] as Record<string, Kit[Shelf][string]>)[id] = copyOf(item);
  };

export const editKitItem =
  <Shelf extends KitShelf>(
    shelf: Shelf,
    id: string,
    fields: Fields<Kit[Shelf][string]>,
  ): Edit<Kit> =>
  (kit) =>
    merge((kit[shelf] as Record<string, Kit[Shelf][string]>)[id], fields);

export const removeKitItem =
  (shelf: KitShelf, id: string): Edit<Kit> =>
  (kit) => {
    delete kit[shelf][id];
  };
