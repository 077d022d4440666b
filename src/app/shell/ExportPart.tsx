import { useState, type ReactNode } from 'react';

import { useKit, useShoot } from '../state/documents.tsx';
import { useServices } from '../state/services.ts';
import { contentsThatGoAlong, shootFileText, type SensitiveContent } from '../state/shoot-files.ts';
import { say } from '../state/view.ts';
import { saveTextFile } from '../ui/save-file.ts';

/** The open shoot as a file, after a look at what goes along. */
export function ExportPart(): ReactNode {
  const shoot = useShoot();
  const kit = useKit();
  const { nowMs, repository } = useServices();
  const contents = contentsThatGoAlong(shoot);
  const [ticked, setTicked] = useState<Readonly<Record<string, boolean>>>({});
  const goesAlong = (content: SensitiveContent): boolean =>
    ticked[keyOf(content)] ?? !content.onlyIfAsked;

  const save = async (): Promise<void> => {
    const text = await shootFileText({
      repository,
      shoot,
      kit,
      leftOut: contents.filter((content) => !goesAlong(content)),
      exportedAtMs: nowMs(),
    });
    if (!text.ok) {
      say(text.problem);
      return;
    }
    saveTextFile(fileName(shoot.title, shoot.date), text.value, 'application/json');
    say('The shoot file was handed to the browser’s downloads.');
  };

  return (
    <section aria-label="Export">
      <h3>Save as a file</h3>
      <details>
        <summary>
          What goes along: {contents.filter(goesAlong).length} places, notes and photos
        </summary>
        <ul className="goes-along">
          {contents.map((content) => (
            <li key={keyOf(content)}>
              <label className="switch">
                <input
                  type="checkbox"
                  checked={goesAlong(content)}
                  onChange={(event) =>
                    setTicked({ ...ticked, [keyOf(content)]: event.currentTarget.checked })
                  }
                />
                <span>
                  {content.what}: {content.text}{' '}
                  <span className="quiet">unticked: {UNTICKED[content.leftOutBy]}</span>
                </span>
              </label>
            </li>
          ))}
        </ul>
      </details>
      <div>
        <button type="button" className="first" data-export-shoot onClick={() => void save()}>
          Save the shoot file
        </button>
      </div>
    </section>
  );
}

const UNTICKED: Readonly<Record<SensitiveContent['leftOutBy'], string>> = {
  rounding: 'rounded to about a kilometre',
  emptying: 'left empty',
  removing: 'left out',
};

const keyOf = (content: SensitiveContent): string => `${content.spotId ?? ''} ${content.field}`;

const fileName = (title: string, date: string): string =>
  `${
    title
      .toLowerCase()
      .replace(/[^a-z0-9]+/g, '-')
      .replace(/^-|-$/g, '') || 'shoot'
  }-${date}.json`;
