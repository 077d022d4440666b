import type { ReactNode } from 'react';

import { meterAtFaces } from '../../../core/plan/meter-at-faces.ts';
import { meterText, shutterText } from '../../ui/recipe-text.ts';
import { placeText } from './light-words.ts';
import { meterSetText, underText } from './step-text.ts';
import type { StepsProps } from './steps-props.ts';

type AllOnStepProps = StepsProps & { readonly number: number };

/** Everything on: the total that the meter shows, and what may still be trimmed. */
export function AllOnStep({ asked, view, working, number }: AllOnStepProps): ReactNode {
  const { recipe } = working;
  const { setup, sources, input } = view;
  const camera = asked.kit.cameras[setup.cameraId];
  const key = sources.find(({ light }) => light.role === 'key');
  const ends = setup.people > 1 ? meterAtFaces(view, recipe) : null;
  return (
    <li>
      <span className="step">{number} all on</span>
      <div>
        <p>
          Meter <strong data-figure="meter-total">{meterText(recipe.meterFNumber)}</strong>
          {ends !== null ? (
            <>
              , ends{' '}
              <span data-figure="meter-ends">
                {meterText(recipe.meterFNumber, ends.best.stops)} and{' '}
                {meterText(recipe.meterFNumber, ends.least.stops)}
              </span>{' '}
              ({placeText(ends.best)}, {placeText(ends.least)})
            </>
          ) : null}{' '}
          <span className="quiet">
            total, cord mode, {meterSetText(recipe, camera)}, flat to the{' '}
            {key === undefined ? 'camera' : 'key'}, at the middle face, no lens filter in it; flash
            is <b data-figure="flash-share">{Math.round(100 * recipe.flashShare)} %</b> of it.
          </span>
        </p>
        {recipe.fillStops === null ? null : (
          <p className="quiet">
            The fill side sits <b data-figure="fill-stops">{underText(recipe.fillStops)}</b>.
          </p>
        )}
        <p>
          Look at the highlights, then frame. Trim the sky with the shutter only, down to{' '}
          <b data-figure="slowest-shutter">{shutterText(input.camera.slowestShutterS, camera)}</b>
          {recipe.shutterS > input.camera.slowestShutterS * 0.98
            ? ' (it stands there already)'
            : ''}
          .
        </p>
      </div>
    </li>
  );
}
