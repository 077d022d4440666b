import type { ReactNode } from 'react';

import { bearingText, metres } from '../../ui/figure-text.ts';
import { ROLE_NAMES } from '../../ui/recipe-text.ts';
import { sharpRowsText } from './sharp-rows-text.ts';
import type { StepsProps } from './steps-props.ts';

/** Where the camera stands, and how long the batteries last. */
export function LastLines({ asked, view, working }: StepsProps): ReactNode {
  const { framing, sources } = view;
  const slowest = Math.max(0, ...working.pace.map(({ recycleS }) => recycleS));
  const first = working.pace.find(({ lightId }) => lightId === working.emptiesFirstLightId);
  const role = sources.find(({ lightId }) => lightId === first?.lightId)?.light.role;
  return (
    <dl className="last-lines">
      <div>
        <dt>Camera</dt>
        <dd data-figure="camera">
          {metres(framing.cameraDistanceM)} away, {metres(framing.cameraHeightM)} high,{' '}
          {Math.round(framing.focalLengthMm)} mm {framing.orientation}, faces{' '}
          {bearingText(framing.bearingDeg)}
        </dd>
      </div>
      {view.setup.rows > 1 ? (
        <div>
          <dt>Sharp</dt>
          <dd data-figure="sharp-rows">{sharpRowsText(asked, view, working)}</dd>
        </div>
      ) : null}
      {first === undefined || role === undefined ? null : (
        <div>
          <dt>Cost</dt>
          <dd>
            <span data-figure="recycle">{slowest.toFixed(1)} s recycle</span> ·{' '}
            <span data-figure="pops">
              {ROLE_NAMES[role].toLowerCase()} empties first: about{' '}
              {roundedPops(first.popsPerCharge)} pops a charge
            </span>
          </dd>
        </div>
      )}
    </dl>
  );
}

/** A rated count is good to about a tenth. */
export const roundedPops = (pops: number): number =>
  pops >= 100 ? Math.round(pops / 10) * 10 : Math.round(pops);
