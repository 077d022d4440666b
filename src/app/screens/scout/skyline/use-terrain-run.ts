import { useCallback, useEffect, useRef, useState } from 'react';

import { setTerrain } from '../../../../core/plan/skyline-edits.ts';
import type { Spot } from '../../../../core/plan/shoot.ts';
import { civilDateOf } from '../../../../core/units/civil-time.ts';
import { fetchElevation, type ElevationTile } from '../../../state/elevation.ts';
import { useEditShoot } from '../../../state/documents.tsx';
import { useServices } from '../../../state/services.ts';
import { say } from '../../../state/view.ts';
import { placeOf } from '../sun-day.ts';
import { terrainOf, terrainOrigin, type TerrainAnswer } from './terrain-words.ts';

export type TerrainRun =
  | { readonly kind: 'idle' }
  | { readonly kind: 'running'; readonly what: string; readonly share: number }
  | { readonly kind: 'failed'; readonly sentence: string }
  | { readonly kind: 'done'; readonly answer: TerrainAnswer };

type Gathered = {
  readonly files: readonly { readonly name: string; readonly blob: Blob }[];
  readonly tiles: readonly ElevationTile[];
  /** Of whom the tiles were asked. */
  readonly host: string | null;
};

/** Works the terrain skyline of a spot out in the worker; leaving the spot cancels it. */
export function useTerrainRun(
  spotId: string,
  spot: Spot,
): {
  readonly run: TerrainRun;
  readonly fromFiles: (files: readonly File[]) => void;
  readonly fromNetwork: (template: string, host: string) => void;
  readonly cancel: () => void;
} {
  const { ground, nowMs } = useServices();
  const edit = useEditShoot();
  const [run, setRun] = useState<TerrainRun>({ kind: 'idle' });
  const under = useRef<AbortController | null>(null);
  useEffect(() => () => under.current?.abort(), []);

  const begin = useCallback((): AbortController => {
    under.current?.abort();
    const controller = new AbortController();
    under.current = controller;
    return controller;
  }, []);

  const work = async (
    { files, tiles, host }: Gathered,
    controller: AbortController,
    doneBefore: number,
  ): Promise<void> => {
    const place = placeOf(spot);
    const { signal } = controller;
    const tell = (share: number): void => {
      if (!signal.aborted)
        setRun({
          kind: 'running',
          what: 'Working out the terrain',
          share: doneBefore + (1 - doneBefore) * share,
        });
    };
    tell(0);
    const done = await ground.run(
      'terrain-skyline',
      { place, eyeHeightM: spot.framing.cameraHeightM, files, tiles },
      { onProgress: tell, signal },
    );
    if (signal.aborted) return;
    if (!done.ok)
      return setRun({
        kind: 'failed',
        sentence:
          done.problem.kind === 'cancelled'
            ? 'Cancelled.'
            : `The terrain could not be worked out: ${done.problem.message}.`,
      });
    if (!done.value.ok) return setRun({ kind: 'failed', sentence: done.value.problem });
    const answer = done.value.value;
    const origin = terrainOrigin(answer, host);
    const dated = civilDateOf(nowMs(), spot.zone);
    edit(
      `terrain of ${spot.name}`,
      setTerrain(spotId, terrainOf({ answer, origin, dated, place })),
    );
    setRun({ kind: 'done', answer });
    say(`${spot.name} has its terrain. Undo takes it back`);
  };

  return {
    run,
    fromFiles: (files) => {
      if (files.length === 0) return;
      const named = files.map((file) => ({ name: file.name, blob: file }));
      void work({ files: named, tiles: [], host: null }, begin(), 0);
    },
    fromNetwork: (template, host) => {
      const controller = begin();
      const { signal } = controller;
      const tell = (share: number): void => {
        if (!signal.aborted)
          setRun({ kind: 'running', what: 'Fetching elevation', share: FETCHING * share });
      };
      tell(0);
      void fetchElevation({ template, place: placeOf(spot), signal, onProgress: tell }).then(
        (fetched) => {
          if (signal.aborted) return undefined;
          if (fetched.ok)
            return work({ files: [], tiles: fetched.value, host }, controller, FETCHING);
          setRun({ kind: 'failed', sentence: fetched.problem });
          return undefined;
        },
      );
    },
    cancel: () => {
      under.current?.abort();
      setRun({ kind: 'failed', sentence: 'Cancelled: the terrain is what it was.' });
    },
  };
}

/** Share of the wait that goes into fetching. */
const FETCHING = 0.6;
