import type { DocumentFault } from './check-document.ts';
import type { Kit, KitShelf } from './kit.ts';
import type { Shoot } from './shoot.ts';

/** A place of a shoot that names an item of the kit. */
export type KitReference = {
  readonly path: string;
  readonly shelf: KitShelf;
  readonly id: string;
};

/** Every place where a setup or a light names something of the kit. */
export const kitReferences = (shoot: Shoot): readonly KitReference[] =>
  Object.entries(shoot.setups).flatMap(([setupId, setup]) => {
    const at = `setups.${setupId}`;
    return [
      { path: `${at}.cameraId`, shelf: 'cameras' as const, id: setup.cameraId },
      { path: `${at}.lensId`, shelf: 'lenses' as const, id: setup.lensId },
      ...Object.keys(setup.pinnedFilterIds ?? {}).map((id) => ({
        path: `${at}.pinnedFilterIds.${id}`,
        shelf: 'filters' as const,
        id,
      })),
      ...Object.entries(setup.lights).flatMap(([lightId, light]) => [
        { path: `${at}.lights.${lightId}.headId`, shelf: 'heads' as const, id: light.headId },
        {
          path: `${at}.lights.${lightId}.modifierId`,
          shelf: 'modifiers' as const,
          id: light.modifierId,
        },
        ...named(`${at}.lights.${lightId}.gelId`, 'gels', light.gelId),
        ...named(`${at}.lights.${lightId}.secondGelId`, 'gels', light.secondGelId),
        ...named(`${at}.lights.${lightId}.standId`, 'stands', light.standId),
      ]),
    ];
  });

const named = (path: string, shelf: KitShelf, id: string | null): readonly KitReference[] =>
  id === null ? [] : [{ path, shelf, id }];

/** Ids of spots that a setup names and the shoot does not have; none in a kit. */
export const missingSpotIds = (document: Shoot | Kit): ReadonlySet<string> =>
  new Set(
    'setups' in document
      ? Object.values(document.setups)
          .map(({ spotId }) => spotId)
          .filter((id) => !Object.hasOwn(document.spots, id))
      : [],
  );

/** The same as faults, one per setup. */
export const missingSpotFaults = (shoot: Shoot): readonly DocumentFault[] =>
  Object.entries(shoot.setups)
    .filter(([, { spotId }]) => !Object.hasOwn(shoot.spots, spotId))
    .map(([id, { spotId }]) => ({
      path: `setups.${id}.spotId`,
      expected: 'the id of a spot of this shoot',
      found: `‘${spotId}’, which is not there`,
    }));
