import type { ReactNode } from 'react';

import type { SetupSource } from '../../../core/plan/setup-source.ts';
import { inWind } from '../../../core/plan/stand-in-wind.ts';
import type { LitLight } from '../../../core/strobe/recipe.ts';
import { Pin } from './Pin.tsx';
import { powerText } from '../../ui/power-text.ts';
import { meterText, originText, ROLE_NAMES } from '../../ui/recipe-text.ts';
import { placeText } from './light-words.ts';
import { meterSetText, standText } from './step-text.ts';
import type { StepsProps } from './steps-props.ts';
import { TimingLine } from './TimingLine.tsx';
import { useLightEdit } from './use-setup-edit.ts';

type LightStepProps = StepsProps & {
  readonly number: number;
  readonly source: SetupSource;
  readonly lit: LitLight;
};

/** One light alone: where it stands, its power, and what the meter shows at the face. */
export function LightStep(props: LightStepProps): ReactNode {
  const { asked, view, working, number, source, lit } = props;
  const { light, lightId, head, faces, output } = source;
  const put = useLightEdit(asked.setupId, lightId);
  const power = powerText(lit.powerStops, head);
  const role = ROLE_NAMES[light.role];
  const camera = asked.kit.cameras[view.setup.cameraId];
  if (inWind(source, view.setup.gustMS).kind === 'above-limit')
    return (
      <li data-step={lightId}>
        <span className="step">
          {number} {role.toLowerCase()} alone
        </span>
        <p>
          Its stand is not put up in this wind: see above for how to have the light all the same.
        </p>
      </li>
    );
  const timing = working.timing[view.sources.indexOf(source)];
  const isRow = view.setup.people > 1 && faces.spreadStops > 0.05;
  return (
    <li data-step={lightId}>
      <span className="step">
        {number} {role.toLowerCase()} alone
      </span>
      <div>
        <p className="power">
          <strong>
            <span data-figure={`power-${lightId}`}>{power.dial}</span>
            {power.dial.startsWith('full') ? '' : ` · ${power.below}`}
          </strong>
          {light.headCount > 1 ? <span>each of {light.headCount}</span> : null}
          <Pin
            what={`power-${lightId}`}
            name={`the power of the ${role.toLowerCase()}`}
            on={light.pinnedPowerStops !== null}
            onTurn={(on) => put('power pin', { pinnedPowerStops: on ? lit.powerStops : null })}
          />
        </p>
        <p>
          {head.name}: {standText(source)}
        </p>
        <p>
          Meter <b data-figure={`meter-${lightId}`}>{meterText(lit.flashMeterFNumber)}</b>
          {isRow ? (
            <>
              , ends{' '}
              <span data-figure={`ends-${lightId}`}>
                {meterText(lit.flashMeterFNumber, faces.nearestStops)} and{' '}
                {meterText(lit.flashMeterFNumber, faces.farthestStops)}
              </span>{' '}
              ({placeText(faces.nearest)}, {placeText(faces.farthest)})
            </>
          ) : null}{' '}
          <span className="quiet">
            flash alone, {meterSetText(working.recipe, camera)}, flat to the light, at{' '}
            {light.role === 'rim' || light.role === 'cross'
              ? 'the edge it draws'
              : light.role === 'background'
                ? 'what it lights'
                : 'the middle face'}
            , no lens filter in it
          </span>
        </p>
        <p className="quiet">
          Its figure:{' '}
          <span data-figure={`origin-${lightId}`}>
            {originText(output.origin, output.spreadStops)}
          </span>
        </p>
        {timing === undefined || (timing.blurCircles === null && light.role !== 'key') ? null : (
          <TimingLine lightId={lightId} timing={timing} motion={view.setup.motion} />
        )}
      </div>
    </li>
  );
}
