import type { ReactNode } from 'react';

import { wayEdit, type Alternative } from '../../../core/plan/alternatives.ts';
import type { SetupCaseInput } from '../../../core/plan/setup-case.ts';
import { useEditShoot } from '../../state/documents.tsx';
import type { Services } from '../../state/services.ts';
import { inHandText } from '../../ui/figure-text.ts';
import { sharpText, softnessText, sourceAngleDeg, wayText } from './alternative-text.ts';
import { roundedPops } from './LastLines.tsx';
import { problemText } from './problem-text.ts';
import { powerText, settingsText } from './recipe-text.ts';
import { useSettled } from './use-settled.ts';
import { useWorkedOut } from './use-worked-out.ts';

/** Other ways to the same sky and what each costs. */
export function OrInstead({ asked }: { readonly asked: SetupCaseInput }): ReactNode {
  const settled = useSettled(asked);
  const ways = useWorkedOut(settled, askAlternatives);
  return (
    <section className="or-instead" aria-label="Or instead">
      <h2>Or instead</h2>
      {ways.state === 'done' ? (
        <div className="table">
          <table data-alternatives="done">
            <thead>
              <tr>
                <th scope="col">Way</th>
                <th scope="col">Settings</th>
                <th scope="col">Sharp</th>
                <th scope="col">Power</th>
                <th scope="col">Pops a charge</th>
                <th scope="col">In hand</th>
                <th scope="col">Key seen from the face</th>
                <th scope="col">
                  <span className="quiet">take it</span>
                </th>
              </tr>
            </thead>
            <tbody>
              {ways.answer.map((alternative, at) => (
                <Row key={at} alternative={alternative} asked={asked} />
              ))}
            </tbody>
          </table>
        </div>
      ) : (
        <p className="quiet" data-alternatives={ways.state}>
          {ways.state === 'failed' ? 'The other ways could not be worked out.' : 'Working out other ways …'}
        </p>
      )}
    </section>
  );
}

const askAlternatives = (
  compute: Services['compute'],
  input: SetupCaseInput,
): Promise<readonly Alternative[] | null> =>
  compute.request('alternatives', { kind: 'alternatives', input });

type RowProps = { readonly alternative: Alternative; readonly asked: SetupCaseInput };

function Row({ alternative, asked }: RowProps): ReactNode {
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
      <td data-label="Settings">{working === null ? '–' : settingsText(working.recipe, working.filters, camera)}</td>
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
      <td data-label="Pops a charge">{first === undefined ? '–' : `about ${roundedPops(first.popsPerCharge)}`}</td>
      <td data-label="In hand">
        {view.answer.ok
          ? inHandText(view.answer.value.recipe.inHandStops)
          : problemText(view, view.answer.problem).headline}
      </td>
      <td data-label="Key seen from the face">
        {key === undefined
          ? '–'
          : softnessText(
              sourceAngleDeg({
                sourceDiameterM: key.output.sourceDiameterM,
                distanceM: key.light.distanceM,
              }),
            )}
      </td>
      <td>
        {way.kind === 'as-planned' ? null : (
          <button
            type="button"
            disabled={working === null}
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
