import type { ReactNode } from 'react';

import type { SetupLight } from '../../../core/plan/setup-light.ts';
import type { SkyCondition } from '../../../core/daylight/sky-condition.ts';
import { clockTime } from '../../../core/units/civil-time.ts';
import { CONDITION_NAMES } from '../../ui/condition-names.ts';
import { bearingText, evAsSettings, evText, spreadText, tenths } from '../../ui/figure-text.ts';

type SkyFiguresProps = {
  readonly light: SetupLight;
  readonly condition: SkyCondition;
  readonly minuteMs: number;
  readonly zone: string;
};

/** The sky in frame at the minute, as a camera would show it. */
export function SkyFigures({ light, condition, minuteMs, zone }: SkyFiguresProps): ReactNode {
  const { sun, skyInFrame: sky } = light;
  const upDeg = sun.apparentAltitudeDeg;
  return (
    <section aria-labelledby="sky-in-frame">
      <h2 id="sky-in-frame">Sky in frame at {clockTime(minuteMs, zone)}</h2>
      <p className="quiet">
        from the model, {CONDITION_NAMES[condition]}; eight days of ten within the ±. Sun{' '}
        <span data-figure="sun-now">
          {tenths(Math.abs(upDeg))}° {upDeg < 0 ? 'down' : 'up'} at {bearingText(sun.azimuthDeg)}
        </span>
        {sky?.sunInFrame === true ? ', in the frame: within 5° of it brighter than shown.' : '.'}
      </p>
      {sky === null ? (
        <p data-figure="no-sky">No sky in this frame: skyline or ground fills it.</p>
      ) : (
        <dl className="rows">
          <EvRow
            name="Darkest twentieth"
            figure="dark-ev"
            ev={sky.darkEv}
            spread={light.frameSpreadStops}
          />
          <EvRow
            name={sky.patchIsFrame ? 'Patch: none is half sky, the whole sky stands in' : 'Patch'}
            figure="patch-ev"
            ev={sky.patchEv}
            spread={light.patchSpreadStops}
          />
          <EvRow name="Mean" figure="mean-ev" ev={sky.meanEv} spread={light.frameSpreadStops} />
          <EvRow
            name="Brightest twentieth"
            figure="bright-ev"
            ev={sky.brightEv}
            spread={light.frameSpreadStops}
          />
        </dl>
      )}
    </section>
  );
}

type EvRowProps = {
  readonly name: string;
  readonly figure: string;
  readonly ev: number;
  readonly spread: number;
};

const EvRow = ({ name, figure, ev, spread }: EvRowProps): ReactNode => (
  <div>
    <dt>{name}</dt>
    <dd>
      <span data-figure={figure}>
        {evText(ev)} {Number.isFinite(ev) ? spreadText(spread) : ''}
      </span>
      <span className="quiet" data-figure={`${figure}-settings`}>
        = {evAsSettings(ev)}
      </span>
    </dd>
  </div>
);
