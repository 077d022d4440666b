import { useState, type ReactNode } from 'react';

import { useKit, useShoot } from '../state/documents.tsx';
import { useServices } from '../state/services.ts';
import { contentsThatGoAlong, shootFileText } from '../state/shoot-files.ts';
import { say } from '../state/view.ts';
import { saveTextFile } from '../ui/save-text-file.ts';

/** The open shoot as a file, after a look at what goes along. */
export function ExportPart(): ReactNode {
  const shoot = useShoot();
  const kit = useKit();
  const { nowMs } = useServices();
  const contents = contentsThatGoAlong(shoot);
  const [leftOut, setLeftOut] = useState<readonly string[]>([]);
  const keyOf = (content: (typeof contents)[number]): string =>
    `${content.spotId} ${content.field}`;

  const save = (): void => {
    saveTextFile(
      fileName(shoot.title, shoot.date),
      shootFileText({
        shoot,
        kit,
        leftOut: contents.filter((content) => leftOut.includes(keyOf(content))),
        exportedAtMs: nowMs(),
      }),
      'application/json',
    );
    say('The shoot file was handed to the browser’s downloads.');
  };

  return (
    <section aria-label="Export">
      <h3>Save as a file</h3>
      <details>
        <summary>What goes along: {contents.length - leftOut.length} places and notes</summary>
        <ul className="goes-along">
          {contents.map((content) => (
            <li key={keyOf(content)}>
              <label className="switch">
                <input
                  type="checkbox"
                  checked={!leftOut.includes(keyOf(content))}
                  onChange={(event) =>
                    setLeftOut(
                      event.currentTarget.checked
                        ? leftOut.filter((key) => key !== keyOf(content))
                        : [...leftOut, keyOf(content)],
                    )
                  }
                />
                <span>
                  {content.what}: {content.text}{' '}
                  <span className="quiet">
                    {content.leftOutBy === 'rounding'
                      ? 'unticked: rounded to about a kilometre'
                      : 'unticked: left empty'}
                  </span>
                </span>
              </label>
            </li>
          ))}
        </ul>
      </details>
      <div>
        <button type="button" className="first" data-export-shoot onClick={save}>
          Save the shoot file
        </button>
      </div>
    </section>
  );
}

const fileName = (title: string, date: string): string =>
  `${
    title
      .toLowerCase()
      .replace(/[^a-z0-9]+/g, '-')
      .replace(/^-|-$/g, '') || 'shoot'
  }-${date}.json`;
