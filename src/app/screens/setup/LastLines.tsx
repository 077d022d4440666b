import type { ReactNode } from 'react';

import { bearingText, metres } from '../../ui/figure-text.ts';
import { PaceLines } from './PaceLines.tsx';
import { sharpRowsText } from './sharp-rows-text.ts';
import type { StepsProps } from './steps-props.ts';

/** Where the camera stands, and how long the batteries last. */
export function LastLines({ asked, view, working }: StepsProps): ReactNode {
  const { framing } = view;
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
      <PaceLines asked={asked} view={view} working={working} />
    </dl>
  );
}
