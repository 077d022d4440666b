import { memo, type ReactNode } from 'react';

import { wayEdit, type Alternative } from '../../../core/plan/alternatives.ts';
import type { SetupCaseInput } from '../../../core/plan/setup-case.ts';
import { useEditShoot } from '../../state/documents.tsx';
import type { Services } from '../../state/services.ts';
import { inHandText } from '../../ui/figure-text.ts';
import { carryText, sharpText, wayText } from './alternative-text.ts';
import { softnessText } from './light-words.ts';
import { roundedPops } from '../../ui/timing-text.ts';
import { problemText } from './problem-text.ts';
import { powerText } from '../../ui/power-text.ts';
import { settingsText } from '../../ui/recipe-text.ts';
import { useSettled } from './use-settled.ts';
import { useWorkedOut } from './use-worked-out.ts';

/** Other ways to the same sky and what each costs; those of the minute before stay, dimmed, until the new ones are there. */
export function OrInstead({ asked }: { readonly asked: SetupCaseInput }): ReactNode {
  const settled = useSettled(asked);
  const { state, last } = useWorkedOut(settled, askAlternatives);
  return (
    <section className="or-instead" aria-label="Or instead" aria-busy={state === 'waiting'}>
      <h2>Or instead</h2>
      <p className="quiet" data-alternatives={state}>
        {
          {
            done: 'the same sky by other settings, each solved and run forward',
            waiting: 'Working out other ways …',
            failed: 'The other ways could not be worked out.',
          }[state]
        }
      </p>
      {last === null ? null : (
        <Ways ways={last.answer} asked={last.asked} stale={state !== 'done'} />
      )}
    </section>
  );
}

const HEADINGS = ['Way', 'Settings', 'Sharp', 'Power', 'Pops a charge', 'In hand', 'At the bright end', 'Key seen from the face', 'Carry', 'Take it']; // prettier-ignore

type WaysProps = {
  readonly ways: readonly Alternative[];
  readonly asked: SetupCaseInput;
  readonly stale: boolean;
};

const Ways = memo(function Ways({ ways, asked, stale }: WaysProps): ReactNode {
  return (
    <div className="table" data-stale={stale}>
      <table>
        <thead>
          <tr>
            {HEADINGS.map((heading) => (
              <th key={heading} scope="col">
                {heading}
              </th>
            ))}
          </tr>
        </thead>
        <tbody>
          {ways.map((alternative, at) => (
            <Row key={at} alternative={alternative} asked={asked} stale={stale} />
          ))}
        </tbody>
      </table>
    </div>
  );
});

const askAlternatives = (
  compute: Services['compute'],
  input: SetupCaseInput,
): Promise<readonly Alternative[] | null> =>
  compute.request('alternatives', { kind: 'alternatives', input });

type RowProps = {
  readonly alternative: Alternative;
  readonly asked: SetupCaseInput;
  readonly stale: boolean;
};

function Row({ alternative, asked, stale }: RowProps): ReactNode {
  const { way, view, sharp } = alternative;
  const edit = useEditShoot();
  const { name, changes } = wayText(way, asked.kit);
  const camera = asked.kit.cameras[view.setup.cameraId];
  const key = view.sources.find(({ light }) => light.role === 'key');
  const working = view.answer.ok ? view.answer.value : null;
  const first = working?.pace.find(({ lightId }) => lightId === working.emptiesFirstLightId);
  return (
    <tr data-way={way.kind === 'other-modifier' ? `modifier-${way.modifierId}` : way.kind}>
      <th scope="row">
        {name}
        {changes === '' ? null : <span className="quiet"> {changes}</span>}
      </th>
      <td data-label="Settings">
        {working === null ? '–' : settingsText(working.recipe, working.filters, camera)}
      </td>
      <td data-label="Sharp">{sharpText(sharp)}</td>
      <td data-label="Power">
        {working === null
          ? '–'
          : view.sources
              .map(({ light, head }, place) => {
                const stops = working.recipe.lights[place]?.powerStops ?? 0;
                return `${light.role} ${powerText(stops, head).dial}`;
              })
              .join(', ')}
      </td>
      <td data-label="Pops a charge">
        {first === undefined ? '–' : `about ${roundedPops(first.popsPerCharge)}`}
      </td>
      <td data-label="In hand">
        {view.answer.ok
          ? inHandText(view.answer.value.recipe.inHandStops)
          : problemText(view, view.answer.problem).headline}
      </td>
      <td data-label="At the bright end">
        {working === null ? '–' : inHandText(working.brightEndInHandStops)}
      </td>
      <td data-label="Key seen from the face">{key === undefined ? '–' : softnessText(key)}</td>
      <td data-label="Carry">
        {way.kind === 'as-planned' ? 'as packed' : carryText(alternative.carry)}
      </td>
      <td>
        {way.kind === 'as-planned' ? null : (
          <button
            type="button"
            disabled={working === null || stale}
            aria-label={`Take this way: ${name}`}
            onClick={() => edit(name, wayEdit(asked, way))}
          >
            Take it
          </button>
        )}
      </td>
    </tr>
  );
}
