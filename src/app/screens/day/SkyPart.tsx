import type { ReactNode } from 'react';

import type { SkyCondition } from '../../../core/daylight/sky-condition.ts';
import { CONDITION_NAMES } from '../../ui/condition-names.ts';
import { evAsSettings, evText, spreadText, tenths } from '../../ui/figure-text.ts';
import type { MinuteFigures } from './minute-figures.ts';

type SkyPartProps = {
  readonly figures: MinuteFigures;
  readonly condition: SkyCondition;
  readonly patchIsFrame: boolean;
};

/** How bright the sky in frame is, and what falls on the subject. */
export function SkyPart({ figures, condition, patchIsFrame }: SkyPartProps): ReactNode {
  const { patchEv, patchSpreadStops, darkEv, meanEv, brightEv, ambientHiddenEv, ambientOutEv } =
    figures;
  if (!Number.isFinite(patchEv))
    return <p data-figure="day-no-sky">No sky in this frame: skyline or ground fills it.</p>;
  return (
    <section aria-label="Sky in frame">
      <h2 className="quiet">
        sky in frame, {patchIsFrame ? 'the whole of it: no patch is half sky' : 'the marked patch'}
      </h2>
      <p className="figure" data-figure="day-patch-ev">
        {evText(patchEv)}
      </p>
      <p className="quiet">
        = <span data-figure="day-patch-settings">{evAsSettings(patchEv)}</span>
        <br />
        <span data-figure="day-patch-spread">{spreadText(patchSpreadStops)}</span>, eight of ten
        minutes; from the model, {CONDITION_NAMES[condition]}
      </p>
      <p className="quiet">
        in the frame{' '}
        <span data-figure="day-frame-ev">
          {tenths(darkEv)} · {tenths(meanEv)} · {tenths(brightEv)}
        </span>{' '}
        darkest twentieth, mean, brightest
      </p>
      <p className="quiet">
        on the subject <span data-figure="day-ambient-ev">{evText(ambientHiddenEv)}</span>
        {ambientOutEv - ambientHiddenEv > 0.05 ? (
          <>
            {' '}
            sun hidden, <span data-figure="day-ambient-out-ev">{tenths(ambientOutEv)}</span> sun out
          </>
        ) : null}
      </p>
    </section>
  );
}
