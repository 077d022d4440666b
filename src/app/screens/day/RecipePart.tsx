import type { ReactNode } from 'react';

import { formatMeterAperture } from '../../../core/exposure/aperture-scale.ts';
import { formatIso } from '../../../core/exposure/iso-scale.ts';
import { formatShutter } from '../../../core/exposure/shutter-scale.ts';
import type { SetupView, SetupViewGap, WorkingSetup } from '../../../core/plan/setup-view.ts';
import type { Setup } from '../../../core/plan/setup-schema.ts';
import type { Result } from '../../../core/units/result.ts';
import { look } from '../../state/view.ts';
import { inHandText, metres, signedTenths } from '../../ui/figure-text.ts';
import { wishText } from '../../ui/hold-words.ts';
import { powerText } from '../../ui/power-text.ts';
import { dialsText, isoAndFiltersText } from '../../ui/short-recipe-text.ts';
import { gapText, problemText } from '../../ui/verdict-text.ts';

type RecipePartProps = {
  readonly setupId: string;
  readonly setup: Setup;
  /** Null while the cursor is on its way. */
  readonly view: Result<SetupView, SetupViewGap> | null;
  /** What the column says meanwhile. */
  readonly inPassing: string;
};

/** The setup's recipe at the minute, or by how much it is short. */
export function RecipePart({ setupId, setup, view, inPassing }: RecipePartProps): ReactNode {
  return (
    <section aria-label={`Recipe of ${setup.name}`}>
      <h2 className="setup-name">{setup.name}</h2>
      <p className="quiet">{wishText(setup.holdStops, setup.holdUnder)}</p>
      {view === null ? (
        <p className="verdict" data-figure="day-in-hand">
          {capital(inPassing)}
        </p>
      ) : view.ok && view.value.answer.ok ? (
        <Settings view={view.value} working={view.value.answer.value} />
      ) : (
        <p className="verdict" data-figure="day-in-hand">
          {capital(
            view.ok
              ? view.value.answer.ok
                ? ''
                : problemText(view.value.answer.problem)
              : gapText(view.problem),
          )}
        </p>
      )}
      <a
        className="button open-setup"
        href="#/setup"
        data-open-setup={setupId}
        onClick={() => look({ spotId: setup.spotId, setupId })}
      >
        {view?.ok === true && !view.value.answer.ok
          ? 'Open in Setup for its fixes'
          : 'Open in Setup'}
      </a>
    </section>
  );
}

const capital = (text: string): string => text.charAt(0).toUpperCase() + text.slice(1);

function Settings({
  view,
  working,
}: {
  readonly view: SetupView;
  readonly working: WorkingSetup;
}): ReactNode {
  const { recipe, brightEndInHandStops } = working;
  const step = view.question.camera.step ?? 'third';
  const meter = `${formatIso(recipe.iso)}, ${formatShutter(recipe.shutterS, step)}`;
  return (
    <>
      <p className="figure" data-figure="day-dials">
        {dialsText(working, step)}
      </p>
      <p data-figure="day-iso-filters">{isoAndFiltersText(working)}</p>
      <p className="verdict" data-figure="day-in-hand">
        {Number.isFinite(recipe.inHandStops) ? inHandText(recipe.inHandStops) : 'No lights yet'}
        {recipe.limitingRole === null ? '' : `, ${recipe.limitingRole} runs out first`}
      </p>
      {Number.isFinite(brightEndInHandStops) ? (
        <p className="quiet">
          <span data-figure="day-bright-end">{signedTenths(brightEndInHandStops)}</span> at the
          bright end of the spread
        </p>
      ) : null}
      <ul className="lights">
        {view.sources.map(({ lightId, light, head, modifier }, place) => {
          const lit = recipe.lights[place];
          if (lit === undefined) return null;
          const { dial, below } = powerText(lit.powerStops, head);
          return (
            <li key={lightId}>
              <p className="quiet">
                {light.role}, {modifier.name}, {metres(light.distanceM)}
              </p>
              <p>
                <span className="power" data-figure={`day-power-${lightId}`}>
                  {dial}
                </span>{' '}
                {below}
                {light.headCount > 1 ? `, ${light.headCount} heads` : ''}
              </p>
              <p className="quiet">
                meter{' '}
                <span data-figure={`day-meter-${lightId}`}>
                  {formatMeterAperture(lit.flashMeterFNumber)}
                </span>{' '}
                flash alone
              </p>
            </li>
          );
        })}
      </ul>
      {view.sources.length === 0 ? null : (
        <p className="quiet">
          Meter at {meter}, flat to the light at the middle face, each light by itself; no lens
          filter in it.
        </p>
      )}
    </>
  );
}
