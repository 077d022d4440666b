import { useId, useRef, type ReactNode } from 'react';

import { editSpot } from '../../../../core/plan/edits.ts';
import { clearTerrain } from '../../../../core/plan/skyline-edits.ts';
import type { Spot } from '../../../../core/plan/shoot.ts';
import { useEditShoot } from '../../../state/documents.tsx';
import { say } from '../../../state/view.ts';
import { ElevationNetwork } from './ElevationNetwork.tsx';
import { terrainLine, terrainNotes } from './source-lines.ts';
import { answerNotes, elevationDoubt } from './terrain-words.ts';
import { useTerrainRun } from './use-terrain-run.ts';

type TerrainPartProps = { readonly spotId: string; readonly spot: Spot; readonly share: number };

/** The terrain of a spot: where it comes from, and how it is worked out. */
export function TerrainPart({ spotId, spot, share }: TerrainPartProps): ReactNode {
  const id = useId();
  const input = useRef<HTMLInputElement>(null);
  const edit = useEditShoot();
  const { run, fromFiles, fromNetwork, cancel } = useTerrainRun(spotId, spot);
  const isRunning = run.kind === 'running';
  const doubt = run.kind === 'done' ? elevationDoubt(run.answer, spot.elevationM) : null;
  return (
    <article>
      <h3>Terrain</h3>
      <p data-figure="source-terrain">{terrainLine(spot, share)}</p>
      {terrainNotes(spot).map((note) => (
        <p key={note} className="quiet" data-figure="terrain-note">
          {note}
        </p>
      ))}
      <div className="field">
        <label htmlFor={id}>From elevation files</label>
        <input
          ref={input}
          id={id}
          type="file"
          multiple
          accept=".hgt,.tif,.tiff,.zip,.gz"
          data-field="elevation-files"
          disabled={isRunning}
          onChange={(event) => {
            fromFiles([...(event.currentTarget.files ?? [])]);
            // The same file may be chosen again.
            event.currentTarget.value = '';
          }}
        />
        <span className="quiet">
          .hgt of 1″ or 3″ named for their south-west corner, packed or not, or GeoTIFF in degrees.
          Read on this device; nothing of them is kept but the skyline.
        </span>
      </div>
      <ElevationNetwork spot={spot} disabled={isRunning} onAsk={fromNetwork} />
      {isRunning ? (
        <div data-figure="terrain-progress">
          <p>
            {run.what}: {Math.round(run.share * 100)} %
          </p>
          <progress value={run.share} max={1} aria-label={run.what} />
          <button type="button" data-cancel-terrain onClick={cancel}>
            Cancel
          </button>
        </div>
      ) : null}
      {run.kind === 'failed' ? (
        <p className="fault" role="alert" data-figure="terrain-fault">
          {run.sentence}
        </p>
      ) : null}
      {run.kind === 'done'
        ? answerNotes(run.answer).map((note) => (
            <p key={note} className="quiet" data-figure="terrain-run-note">
              {note}
            </p>
          ))
        : null}
      {doubt === null || run.kind !== 'done' ? null : (
        <p data-figure="ground-elevation">
          {doubt}{' '}
          <button
            type="button"
            data-take-ground
            onClick={() =>
              edit(
                `elevation of ${spot.name}`,
                editSpot(spotId, { elevationM: Math.round(run.answer.groundElevationM) }),
              )
            }
          >
            Take {Math.round(run.answer.groundElevationM)} m for the spot
          </button>
        </p>
      )}
      {spot.terrain === null ? null : (
        <button
          type="button"
          data-clear-terrain
          onClick={() => {
            edit(`terrain of ${spot.name}`, clearTerrain(spotId));
            say(`The terrain of ${spot.name} is taken away. Undo brings it back`);
          }}
        >
          Remove terrain
        </button>
      )}
    </article>
  );
}
