import { useMemo, type ReactNode } from 'react';

import { batteriesFor } from '../../../core/plan/batteries-for-day.ts';
import { slowestPace } from '../../../core/plan/light-pace.ts';
import { batteryNeedText } from '../../ui/battery-text.ts';
import { ROLE_NAMES } from '../../ui/recipe-text.ts';
import { frameRateText, roundedPops } from '../../ui/timing-text.ts';
import type { StepsProps } from './steps-props.ts';

/** How fast the setup can be shot, how long its charges last, and the batteries of all its frames. */
export function PaceLines({ asked, view, working }: StepsProps): ReactNode {
  const { setup, sources } = view;
  const { kit, setupId } = asked;
  const needs = useMemo(
    () => batteriesFor([{ setupId, setup, views: [view] }], kit),
    [setupId, setup, view, kit],
  );
  const longest = Math.max(0, ...working.pace.map(({ recycleS }) => recycleS));
  const slowest = slowestPace(working.pace);
  const first = working.pace.find(({ lightId }) => lightId === working.emptiesFirstLightId);
  const roleOf = (lightId: string | undefined): string => {
    const role = sources.find((source) => source.lightId === lightId)?.light.role;
    return role === undefined ? 'it' : ROLE_NAMES[role].toLowerCase();
  };
  if (first === undefined || slowest === null) return null;
  const rests = working.pace.filter(({ popsBeforeRest }) => popsBeforeRest !== null);
  return (
    <>
      <div>
        <dt>Cost</dt>
        <dd>
          <span data-figure="recycle">{longest.toFixed(1)} s recycle</span> ·{' '}
          <span data-figure="pops">
            {roleOf(first.lightId)} empties first: about {roundedPops(first.popsPerCharge)} pops a
            charge
          </span>
        </dd>
      </div>
      <div>
        <dt>Pace</dt>
        <dd>
          <span data-figure="frames-per-minute">{frameRateText(slowest.framesPerMinute)}</span>
          {rests.map(({ lightId, popsBeforeRest, restS }) => (
            <span key={lightId} data-figure={`burst-${lightId}`}>
              {' '}
              · {roleOf(lightId)}: {popsBeforeRest} in a row, then{' '}
              {restS === 0 ? 'it rests' : `${Math.round(restS)} s of rest`}
            </span>
          ))}
        </dd>
      </div>
      <div>
        <dt>Batteries</dt>
        <dd>
          {setup.frames} frames at {setup.airC} °C:{' '}
          <span data-figure="batteries">{needs.map(batteryNeedText).join('. ')}</span>
        </dd>
      </div>
    </>
  );
}
