import type { ReactNode } from 'react';

import { seenLights, whiteBalanceOf } from '../../../core/plan/seen-lights.ts';
import { settingsText } from '../../ui/recipe-text.ts';
import { seenText, whiteBalanceText } from './colour-text.ts';
import { underText } from './step-text.ts';
import type { StepsProps } from './steps-props.ts';

/** Heads off: what the camera is set to and what the sky does then. */
export function CameraStep({ asked, view, working }: StepsProps): ReactNode {
  const { recipe, filters } = working;
  const { setup, light } = view;
  const looks = seenLights(view, asked.kit);
  const key = looks.sources.find(({ role }) => role === 'key');
  const twoStates = recipe.unlitOutStops - recipe.unlitStops > 0.05;
  return (
    <li>
      <span className="step">1 heads off</span>
      <div>
        <p>
          <strong>{settingsText(recipe, filters, asked.kit.cameras[setup.cameraId])}</strong>
        </p>
        <p data-figure="white-balance">
          White balance {whiteBalanceText(whiteBalanceOf(setup))}
          {key === undefined ? '' : `: the key on skin ${seenText(key.seen)}`}, the sky{' '}
          {seenText(looks.sky)}
        </p>
        <p className="quiet">
          You see{light.skyInFrame?.patchIsFrame === true ? '' : ' the patch '}
          {light.skyInFrame?.patchIsFrame === true ? null : (
            <b data-figure="patch-stops">{underText(recipe.patchStops)}</b>
          )}
          {light.skyInFrame?.patchIsFrame === true ? ' ' : ', '}the sky in frame{' '}
          <b data-figure="frame-stops">{underText(recipe.frameStops)}</b>, the unlit face{' '}
          <b data-figure="unlit-stops">{underText(recipe.unlitStops)}</b>
          {twoStates ? (
            <>
              {' '}
              (with the sun out{' '}
              <b data-figure="unlit-out-stops">{underText(recipe.unlitOutStops)}</b>)
            </>
          ) : null}
        </p>
      </div>
    </li>
  );
}
