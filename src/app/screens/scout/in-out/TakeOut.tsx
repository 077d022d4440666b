import { useState, type ReactNode } from 'react';

import { inOrder } from '../../../../core/plan/order-key.ts';
import {
  PLAIN_WAYPOINT_LINES,
  WAYPOINT_LINES,
  type WaypointLine,
} from '../../../../core/plan/waypoints-of.ts';
import { formatCoordinates } from '../../../../core/place/format-coordinates.ts';
import { useShoot } from '../../../state/documents.tsx';
import { SPOT_FORMATS, spotFileText, type SpotFormatId } from '../../../state/spot-export.ts';
import { say } from '../../../state/view.ts';
import { saveTextFile } from '../../../ui/save-file.ts';
import { SelectField } from '../../../ui/SelectField.tsx';
import { Switch } from '../../../ui/Switch.tsx';
import { counted } from './brought-words.ts';

const LINE_WORDS: Readonly<Record<WaypointLine, string>> = {
  framing: 'where the camera looks',
  'way-in': 'parking and way in',
  ground: 'ground',
  'foot-traffic': 'foot traffic',
  shelter: 'shelter',
  wind: 'wind',
  power: 'power',
  toilets: 'toilets',
  hazards: 'hazards',
  permission: 'permission, with its number',
  contacts: 'contacts',
};

/** Spots as a file for other programs, after a choice of what goes along. */
export function TakeOut(): ReactNode {
  const shoot = useShoot();
  const spots = inOrder(shoot.spots);
  const [format, setFormat] = useState<SpotFormatId>('gpx');
  const [left, setLeft] = useState<ReadonlySet<string>>(new Set());
  const [lines, setLines] = useState<readonly WaypointLine[]>(PLAIN_WAYPOINT_LINES);
  const [roughly, setRoughly] = useState(false);
  const going = spots.filter(([id]) => !left.has(id));

  const save = (): void => {
    const chosen = SPOT_FORMATS.find(({ id }) => id === format);
    if (chosen === undefined) return;
    const spotIds = new Set(going.map(([id]) => id));
    saveTextFile(
      `${fileName(shoot.title)}${chosen.extension}`,
      spotFileText(shoot, { format, spotIds, lines, roughly }),
      chosen.mediaType,
    );
    say(`${counted(going.length, 'spot')} handed to the browser’s downloads as ${chosen.label}.`);
  };

  if (spots.length === 0) return <p>This shoot has no spot to take out.</p>;
  return (
    <>
      <SelectField
        label="As"
        field="take-out-format"
        value={format}
        options={SPOT_FORMATS.map(({ id, label }) => ({ value: id, text: label }))}
        onChoose={setFormat}
      />
      <fieldset>
        <legend>What goes along: these spots, with name, position and elevation</legend>
        {spots.map(([id, spot]) => (
          <Switch
            key={id}
            label={`${spot.name}, ${formatCoordinates(spot)}`}
            field={`take-out-${id}`}
            on={!left.has(id)}
            onTurn={(on) => {
              const next = new Set(left);
              if (on) next.delete(id);
              else next.add(id);
              setLeft(next);
            }}
          />
        ))}
      </fieldset>
      <Switch
        label="Positions only to about a kilometre"
        field="take-out-roughly"
        on={roughly}
        onTurn={setRoughly}
      />
      <fieldset>
        <legend>And of their notes</legend>
        {WAYPOINT_LINES.map((line) => (
          <Switch
            key={line}
            label={LINE_WORDS[line]}
            field={`take-out-line-${line}`}
            on={lines.includes(line)}
            onTurn={(on) => setLines(on ? [...lines, line] : lines.filter((one) => one !== line))}
          />
        ))}
      </fieldset>
      <p className="quiet">
        Photos, readings and skylines stay here; the shoot file carries those. A photo on its own is
        saved from its spot, without the place it was taken at.
      </p>
      <div>
        <button
          type="button"
          className="first"
          data-save-spots
          disabled={going.length === 0}
          onClick={save}
        >
          Save {counted(going.length, 'spot')}
        </button>
      </div>
    </>
  );
}

const fileName = (title: string): string =>
  title
    .toLowerCase()
    .replace(/[^a-z0-9]+/g, '-')
    .replace(/^-|-$/g, '') || 'spots';
