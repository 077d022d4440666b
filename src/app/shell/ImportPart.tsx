import { useState, type ReactNode } from 'react';

import { useEditKit, useKit } from '../state/documents.tsx';
import { useServices } from '../state/services.ts';
import { lookAtShootFile, takeShoot, type ShootImport } from '../state/shoot-files.ts';
import { say } from '../state/view.ts';

type Looked =
  | { readonly kind: 'nothing' }
  | { readonly kind: 'refused'; readonly name: string; readonly sentences: readonly string[] }
  | { readonly kind: 'ready'; readonly name: string; readonly plan: ShootImport };

/** Reads a shoot file, shows what importing it would do, and does it when told to. */
export function ImportPart(props: { readonly onOpenShoot: (id: string) => void }): ReactNode {
  const { repository, newId } = useServices();
  const kit = useKit();
  const editKit = useEditKit();
  const [looked, setLooked] = useState<Looked>({ kind: 'nothing' });

  const look = async (file: File): Promise<void> => {
    const seen = await lookAtShootFile(file, { repository, kit, newId: newId() });
    setLooked(
      seen.ok
        ? { kind: 'ready', name: file.name, plan: seen.value }
        : { kind: 'refused', name: file.name, sentences: seen.problem },
    );
  };

  const take = async (plan: ShootImport): Promise<void> => {
    const taken = await takeShoot(plan, repository);
    if (!taken.ok) {
      say(taken.problem);
      return;
    }
    if (plan.added.length > 0) editKit('kit from a shoot file', plan.kitEdit);
    setLooked({ kind: 'nothing' });
    say(`Imported ${plan.shoot.title}.`);
    props.onOpenShoot(plan.shoot.id);
  };

  return (
    <section aria-label="Import">
      <h3>Open a shoot file</h3>
      <label className="file-choice">
        <span className="quiet">A file saved by Undersky; nothing changes before you say so</span>
        <input
          type="file"
          accept=".json,application/json"
          data-import-shoot
          onChange={(event) => {
            const file = event.currentTarget.files?.[0];
            if (file !== undefined) void look(file);
          }}
        />
      </label>
      {looked.kind === 'refused' ? (
        <div role="alert" data-import-refused>
          <p>
            <strong>{looked.name} was not imported.</strong> The open shoot is as it was.
          </p>
          {looked.sentences.map((sentence) => (
            <p key={sentence} className="fault">
              {sentence}
            </p>
          ))}
        </div>
      ) : null}
      {looked.kind === 'ready' ? <Plan {...looked} onTake={() => void take(looked.plan)} /> : null}
    </section>
  );
}

function Plan(props: {
  readonly name: string;
  readonly plan: ShootImport;
  readonly onTake: () => void;
}): ReactNode {
  const { name, plan } = props;
  const { shoot, copyOf, added, keptAsHere, photos, photosWithoutPicture } = plan;
  const pictures = Object.keys(photos).length;
  return (
    <div data-import-plan>
      <p>
        {name} holds <strong>{shoot.title}</strong>: {Object.keys(shoot.spots).length} spots,{' '}
        {Object.keys(shoot.setups).length} setups.
        {copyOf === null
          ? ' It will be added.'
          : ' A shoot of the same origin is here already: this one becomes a copy beside it.'}
      </p>
      {added.length > 0 ? <p>New in the kit: {added.join(', ')}.</p> : null}
      {keptAsHere.length > 0 ? (
        <p>In the kit with other figures, yours stay: {keptAsHere.join(', ')}.</p>
      ) : null}
      {pictures > 0 ? <p>{counted(pictures, 'photo')} with the picture.</p> : null}
      {photosWithoutPicture > 0 ? (
        <p>{counted(photosWithoutPicture, 'photo')} whose picture did not come along.</p>
      ) : null}
      <button type="button" className="first" data-import-take onClick={props.onTake}>
        Import and open it
      </button>
    </div>
  );
}

const counted = (count: number, noun: string): string =>
  `${count} ${noun}${count === 1 ? '' : 's'}`;
