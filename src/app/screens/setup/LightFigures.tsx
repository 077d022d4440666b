import type { ReactNode } from 'react';

import type { SetupView } from '../../../core/plan/setup-view.ts';
import { CONDITION_NAMES } from '../../ui/condition-names.ts';
import { evAsSettings, evText, spreadText } from '../../ui/figure-text.ts';

/** How bright sky and subject are, each with its spread and as a camera would show it. */
export function LightFigures({ view }: { readonly view: SetupView }): ReactNode {
  const { light, scene, setup } = view;
  const sky = light.skyInFrame;
  const inTwoStates = light.ambientOutEv - light.ambientHiddenEv > 0.05;
  const { spreadStops } = light.daylight;
  return (
    <div className="light-figures">
      <h2>How bright it is</h2>
      <p className="quiet" data-figure="light-origin">
        from the model, {CONDITION_NAMES[scene.condition]}; eight of ten minutes lie inside the ±
      </p>
      <dl className="rows">
        {sky === null ? null : (
          <>
            <Row
              name="Sky, darkest twentieth"
              figure="dark-ev"
              ev={sky.darkEv}
              spread={light.frameSpreadStops}
            />
            {sky.patchIsFrame ? null : (
              <Row
                name="Sky, the patch"
                figure="patch-ev"
                ev={sky.patchEv}
                spread={light.patchSpreadStops}
              />
            )}
            <Row
              name="Sky in frame, mean"
              figure="mean-ev"
              ev={sky.meanEv}
              spread={light.frameSpreadStops}
            />
            <Row
              name="Sky, brightest twentieth"
              figure="bright-ev"
              ev={sky.brightEv}
              spread={light.frameSpreadStops}
            />
          </>
        )}
        <Row
          name={inTwoStates ? 'Ambient on the face, sun hidden' : 'Ambient on the face'}
          figure="ambient-ev"
          ev={light.ambientHiddenEv}
          spread={spreadStops}
        />
        {inTwoStates ? (
          <Row
            name="Ambient on the face, sun out"
            figure="ambient-out-ev"
            ev={light.ambientOutEv}
            spread={spreadStops}
          />
        ) : null}
        {setup.shaded && light.ambientOutEv - light.ambientShadedEv > 0.05 ? (
          <Row
            name="Ambient on the face, panel up"
            figure="ambient-shaded-ev"
            ev={light.ambientShadedEv}
            spread={spreadStops}
          />
        ) : null}
        <Row
          name="A dome meter reads"
          figure="incident-ev"
          ev={light.incidentEv}
          spread={spreadStops}
        />
      </dl>
    </div>
  );
}

type RowProps = {
  readonly name: string;
  readonly figure: string;
  readonly ev: number;
  readonly spread: number;
};

const Row = ({ name, figure, ev, spread }: RowProps): ReactNode => (
  <div>
    <dt>{name}</dt>
    <dd>
      <span data-figure={figure}>{evText(ev)}</span> {spreadText(spread)}
      <span className="quiet">= {evAsSettings(ev)}</span>
    </dd>
  </div>
);
