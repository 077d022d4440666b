import './filters-and-colour.css';
import { useDeferredValue, useMemo, useState, type ReactNode } from 'react';

import { filterChoices, gelChoices, type ColourChoice } from '../../../core/plan/colour-choices.ts';
import type { SetupView } from '../../../core/plan/setup-view.ts';
import { useEditShoot, useKit, useShoot } from '../../state/documents.tsx';
import { NumberField } from '../../ui/NumberField.tsx';
import { choiceText, costText, miredWords, missText, seenText } from './colour-text.ts';

type ColourPairsProps = { readonly setupId: string; readonly view: SetupView };

const ASKED_AT_FIRST_MIRED = 80;

/** Gels and white balance that colour the ambient and leave the skin alone, each solved. */
export function ColourPairs({ setupId, view }: ColourPairsProps): ReactNode {
  const shoot = useShoot();
  const kit = useKit();
  const [bluerMired, setBluerMired] = useState(ASKED_AT_FIRST_MIRED);
  const calm = useDeferredValue(view);
  const asked = useMemo(
    () => ({ asked: { shoot, kit, setupId }, view: calm }),
    [shoot, kit, setupId, calm],
  );
  const gels = useMemo(() => gelChoices(asked, bluerMired), [asked, bluerMired]);
  const filters = useMemo(() => filterChoices(asked), [asked]);
  return (
    <>
      <div className="fields">
        <NumberField
          label="Ambient bluer by, warmer negative"
          field="bluer-mired"
          unit="mired"
          min={-300}
          max={300}
          step={10}
          digits={0}
          value={bluerMired}
          note={miredWords(bluerMired)}
          onCommit={(value) => value !== null && setBluerMired(value)}
        />
      </div>
      {gels.length === 0 ? (
        <p data-note="no-pair">
          No pair of the gels in the kit goes with a white balance that the camera can be set to, or
          the setup has no key.
        </p>
      ) : (
        <Choices choices={gels} id="pair" />
      )}
      <h3>A colour filter on the lens, its complement on the flash</h3>
      <p className="quiet">
        The white balance stays; the filter costs flash and ambient alike, the gel the flash alone.
      </p>
      {filters.length === 0 ? (
        <p data-note="no-colour-filter">There is no colour filter in the kit.</p>
      ) : (
        <Choices choices={filters} id="filter-pair" />
      )}
    </>
  );
}

type ChoicesProps = { readonly choices: readonly ColourChoice[]; readonly id: string };

function Choices({ choices, id }: ChoicesProps): ReactNode {
  const kit = useKit();
  const edit = useEditShoot();
  return (
    <ol className="colour-choices">
      {choices.map((choice, place) => (
        <li key={choiceText(choice, kit)}>
          <span data-figure={`${id}-${place}`}>{choiceText(choice, kit)}</span>
          <span>
            skin <span data-figure={`${id}-${place}-skin`}>{seenText(choice.skin)}</span>, ambient{' '}
            <span data-figure={`${id}-${place}-ambient`}>{seenText(choice.ambient)}</span>
            {choice.missMired === null ? '' : ` (${missText(choice.missMired)})`}
          </span>
          <span className="quiet" data-figure={`${id}-${place}-cost`}>
            {costText(choice)}
          </span>
          <button
            type="button"
            data-use={`${id}-${place}`}
            onClick={() => edit('colour pair', choice.edit)}
          >
            Use this pair
          </button>
        </li>
      ))}
    </ol>
  );
}
