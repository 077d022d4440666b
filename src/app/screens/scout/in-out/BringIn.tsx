import { useEffect, useRef, useState, type ReactNode } from 'react';

import type { GeoPoint } from '../../../../core/place/geo-point.ts';
import { useAtlas } from '../../../state/atlas.ts';
import { useEditShoot, useShoot } from '../../../state/documents.tsx';
import { useServices } from '../../../state/services.ts';
import {
  lookAtFiles,
  lookAtText,
  takeIn,
  type BroughtIn,
  type Taken,
} from '../../../state/spot-files.ts';
import { look, say } from '../../../state/view.ts';
import { elevationFinding } from '../place-findings.ts';
import { counted, isEmpty } from './brought-words.ts';
import { BroughtPreview } from './BroughtPreview.tsx';

type BringInProps = {
  readonly given: { readonly files: readonly File[]; readonly text: string } | null;
  readonly spotId: string | null;
  readonly onDone: () => void;
};

type Progress = { readonly done: number; readonly of: number };

/** Files or a text are looked at first; nothing changes before the user says so. */
export function BringIn({ given, spotId, onDone }: BringInProps): ReactNode {
  const shoot = useShoot();
  const edit = useEditShoot();
  const atlas = useAtlas();
  const { repository, newId } = useServices();
  const [text, setText] = useState(given?.text ?? '');
  const [progress, setProgress] = useState<Progress | null>(null);
  const [brought, setBrought] = useState<BroughtIn | null>(null);
  const stop = useRef<AbortController | null>(null);
  const spot = spotId === null ? undefined : shoot.spots[spotId];
  const near: GeoPoint | null = spot ?? null;

  const lookAt = async (files: readonly File[]): Promise<void> => {
    const stopping = new AbortController();
    stop.current = stopping;
    setProgress({ done: 0, of: files.length });
    const found = await lookAtFiles(files, {
      shoot,
      near,
      declination: atlas.declination,
      onProgress: (done) => setProgress({ done, of: files.length }),
      signal: stopping.signal,
    });
    setProgress(null);
    setBrought(found);
  };
  const begin = useRef(() => {
    if (given === null) return;
    if (given.files.length > 0) void lookAt(given.files);
    else if (given.text.trim() !== '') setBrought(lookAtText(given.text, { shoot, near }));
  });
  useEffect(function lookAtGiven() {
    begin.current();
  }, []);

  const take = async (taken: Taken): Promise<void> => {
    if (brought === null) return;
    const done = await takeIn(shoot, brought, taken, {
      repository,
      newId,
      surroundings: atlas.surroundings,
      elevationOf: (found) => elevationFinding(found).elevationM,
    });
    if (!done.ok) {
      say(done.problem);
      return;
    }
    const { addedSpotIds, addedPhotos } = done.value;
    const what = [
      ...(addedSpotIds.length > 0 ? [counted(addedSpotIds.length, 'spot')] : []),
      ...(addedPhotos > 0 ? [counted(addedPhotos, 'photo')] : []),
    ].join(' and ');
    edit(`bring in ${what}`, done.value.edit);
    const first = addedSpotIds[0];
    if (first !== undefined) look({ spotId: first });
    say(`Brought in ${what}. Undo takes all of it back.`);
    onDone();
  };

  if (progress !== null)
    return (
      <p role="status" data-note="looking">
        Looked at {progress.done} of {progress.of}.{' '}
        <button type="button" onClick={() => stop.current?.abort()}>
          Stop here
        </button>
      </p>
    );
  if (brought !== null && !isEmpty(brought))
    return (
      <BroughtPreview
        brought={brought}
        spotId={spotId}
        onTake={(taken) => void take(taken)}
        onBack={() => setBrought(null)}
      />
    );
  return (
    <>
      {brought === null ? null : <Refused brought={brought} />}
      <label className="file-choice">
        <span>
          Waypoint files (GPX, KML, KMZ, GeoJSON, CSV) and photos with a position, several at once
        </span>
        <input
          type="file"
          multiple
          accept=".gpx,.kml,.kmz,.geojson,.json,.csv,.txt,image/*,.heic,.heif,.tif,.tiff"
          data-field="bring-in-files"
          onChange={(event) => {
            const files = [...(event.currentTarget.files ?? [])];
            event.currentTarget.value = '';
            if (files.length > 0) void lookAt(files);
          }}
        />
      </label>
      <form
        className="field"
        onSubmit={(event) => {
          event.preventDefault();
          setBrought(lookAtText(text, { shoot, near }));
        }}
      >
        <label htmlFor="bring-in-text">
          Or text: a place a line, in any usual notation, as a geo: link or an open location code
        </label>
        <textarea
          id="bring-in-text"
          rows={4}
          data-field="bring-in-text"
          value={text}
          placeholder={'Quay, 45.6503 N 13.7621 E\ngeo:45.65,13.76\n8FQFJQ26+4R'}
          onChange={(event) => setText(event.currentTarget.value)}
        />
        <button data-look-at-text>Look at it</button>
      </form>
      <p className="quiet">
        Everything is read on this device and shown first. Files dropped on the map, and text pasted
        there, come here too.
      </p>
    </>
  );
}

const Refused = ({ brought }: { readonly brought: BroughtIn }): ReactNode => (
  <div role="alert" data-note="nothing-found">
    <p>
      <strong>Nothing to bring in.</strong> The shoot is as it was.
    </p>
    <ul>
      {brought.refused.map((sentence) => (
        <li key={sentence}>{sentence}</li>
      ))}
      {brought.skipped.map(({ what, why }) => (
        <li key={`${what} ${why}`}>
          {what}: {why}
        </li>
      ))}
    </ul>
  </div>
);
