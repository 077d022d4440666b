import { useCallback, useMemo, useState } from 'react';

import type { GeoPoint } from '../../../core/place/geo-point.ts';
import { addSpot, editSpot } from '../../../core/plan/edits.ts';
import { newSpot } from '../../../core/plan/new-spot.ts';
import type { Spot } from '../../../core/plan/shoot.ts';
import { useAtlas, type Surroundings } from '../../state/atlas.ts';
import { useEditShoot, useShoot } from '../../state/documents.tsx';
import { useServices } from '../../state/services.ts';
import { look, say } from '../../state/view.ts';
import { elevationFinding, movedFar, type PlaceFindings } from './place-findings.ts';

export type SpotPlaces = {
  readonly findings: Readonly<Record<string, PlaceFindings>>;
  readonly lookUp: (spotId: string, point: GeoPoint) => Promise<Surroundings | null>;
  readonly add: (at: {
    readonly point: GeoPoint;
    readonly name: string | null;
    readonly like: Spot | null;
  }) => Promise<void>;
  readonly move: (spotId: string, point: GeoPoint) => void;
};

/** Puts spots somewhere, with what the names on this device say about the place. */
export function useSpotPlaces(): SpotPlaces {
  const shoot = useShoot();
  const edit = useEditShoot();
  const atlas = useAtlas();
  const { newId } = useServices();
  const [findings, setFindings] = useState<SpotPlaces['findings']>({});

  const lookUp = useCallback<SpotPlaces['lookUp']>(
    async (spotId, point) => {
      const found = await atlas.surroundings(point).catch(() => null);
      setFindings((before) => ({ ...before, [spotId]: { point, found } }));
      return found;
    },
    [atlas],
  );

  const add = useCallback<SpotPlaces['add']>(
    async ({ point, name, like }) => {
      const spotId = newId();
      const found = await lookUp(spotId, point);
      const spot = newSpot(shoot, {
        point,
        name,
        zone: found?.zone.zone ?? like?.zone ?? 'Etc/UTC',
        elevationM: elevationFinding(found).elevationM,
        framing: like === null ? null : { ...like.framing },
      });
      edit(`add ${spot.name}`, addSpot(spotId, spot));
      look({ spotId });
      say(addedText(spot, found));
    },
    [shoot, edit, lookUp, newId],
  );

  const move = useCallback<SpotPlaces['move']>(
    (spotId, point) => {
      const spot = shoot.spots[spotId];
      if (spot === undefined) return;
      const { latitudeDeg, longitudeDeg } = point;
      edit(`move ${spot.name}`, editSpot(spotId, { latitudeDeg, longitudeDeg }));
      if (!movedFar(spot, point)) return;
      void lookUp(spotId, point);
      say(`${spot.name} moved far: check its zone and elevation under Place`);
    },
    [shoot, edit, lookUp],
  );

  return useMemo(() => ({ findings, lookUp, add, move }), [findings, lookUp, add, move]);
}

function addedText(spot: Spot, found: Surroundings | null): string {
  if (found === null)
    return `Added ${spot.name}. The place names could not be read: check zone and elevation under Place`;
  const ask = found.zone.alternatives.length === 0 ? '' : ` Check the zone: ${found.zone.reason}`;
  return `Added ${spot.name}, ${spot.elevationM} m up, clocks of ${spot.zone}.${ask}`;
}
