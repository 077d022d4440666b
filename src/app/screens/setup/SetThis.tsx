import type { ReactNode } from 'react';

import { formatIso } from '../../../core/exposure/iso-scale.ts';
import type { SetupCaseInput } from '../../../core/plan/setup-case.ts';
import type { SetupView, WorkingSetup } from '../../../core/plan/setup-view.ts';
import { blockedByWind } from '../../../core/plan/wind-versions.ts';
import { spreadText, tenths } from '../../ui/figure-text.ts';
import { Dials } from './Dials.tsx';
import { NextChangeLine } from './NextChangeLine.tsx';
import { apertureText, filtersText, shutterText } from '../../ui/recipe-text.ts';
import { ShortBy } from './ShortBy.tsx';
import { StackNotes } from './StackNotes.tsx';
import { Steps } from './Steps.tsx';
import { WindBlock } from './WindBlock.tsx';

type SetThisProps = {
  readonly asked: SetupCaseInput;
  readonly view: SetupView;
  /** The real clock while the screen follows it. */
  readonly presentMs: number | null;
};

/** The recipe in working order, or why there is none and what would make one. */
export function SetThis({ asked, view, presentMs }: SetThisProps): ReactNode {
  const { answer } = view;
  return (
    <>
      <h2>Set this, in this order</h2>
      {answer.ok ? (
        <>
          <Big asked={asked} working={answer.value} />
          <InHand view={view} working={answer.value} />
          <NextChangeLine asked={asked} view={view} working={answer.value} presentMs={presentMs} />
        </>
      ) : (
        <ShortBy asked={asked} view={view} problem={answer.problem} />
      )}
      {blockedByWind(view).map((source) => (
        <WindBlock key={source.lightId} asked={asked} view={view} source={source} />
      ))}
      <Dials asked={asked} view={view} />
      <StackNotes view={view} kit={asked.kit} />
      {answer.ok ? <Steps asked={asked} view={view} working={answer.value} /> : null}
    </>
  );
}

type BigProps = { readonly asked: SetupCaseInput; readonly working: WorkingSetup };

function Big({ asked, working }: BigProps): ReactNode {
  const { recipe, filters } = working;
  const setup = asked.shoot.setups[asked.setupId];
  const camera = setup && asked.kit.cameras[setup.cameraId];
  return (
    <p className="big">
      <span className="figure">
        <span data-figure="shutter">{shutterText(recipe.shutterS, camera)}</span>{' '}
        <span data-figure="aperture">{apertureText(recipe.fNumber, camera)}</span>
      </span>
      <span>
        <span data-figure="iso">{formatIso(recipe.iso)}</span> ·{' '}
        <span data-figure="filters">{filtersText(filters)}</span>
      </span>
    </p>
  );
}

type InHandProps = { readonly view: SetupView; readonly working: WorkingSetup };

function InHand({ view, working }: InHandProps): ReactNode {
  const { recipe, brightEndInHandStops } = working;
  if (!Number.isFinite(recipe.inHandStops))
    return <p data-figure="in-hand">No light to run out: add one below.</p>;
  const bright =
    brightEndInHandStops >= 0
      ? `${tenths(brightEndInHandStops)} at the bright end`
      : `short by ${tenths(-brightEndInHandStops)} at the bright end`;
  return (
    <p>
      <strong data-figure="in-hand">{tenths(recipe.inHandStops)} in hand</strong>,{' '}
      <span data-figure="in-hand-bright">{bright}</span>{' '}
      <span className="quiet">
        of {spreadText(view.referenceSpreadStops)}; the {recipe.limitingRole ?? 'key'} would run out
        first
      </span>
    </p>
  );
}
