import { useEffect, useMemo, useRef, type ReactNode } from 'react';

import type { Kit } from '../../../core/plan/kit.ts';
import { projectedFraming } from '../../../core/plan/picture-geometry.ts';
import type { SetupView } from '../../../core/plan/setup-view.ts';
import { skyModel } from '../../../core/sky/sky-model.ts';
import { clockTime } from '../../../core/units/civil-time.ts';
import { drawFrame } from './draw-frame.ts';
import { filtersText, settingsText } from '../../ui/recipe-text.ts';

type PredictedFrameProps = {
  readonly view: SetupView;
  readonly kit: Kit;
  readonly minuteMs: number;
};

const LONG_SIDE_PX = 720;

/** The computed picture at the recipe's settings. */
export function PredictedFrame({ view, kit, minuteMs }: PredictedFrameProps): ReactNode {
  const canvas = useRef<HTMLCanvasElement>(null);
  const { sensorWidthMm, sensorHeightMm } = projectedFraming(view.framing);
  const scale = LONG_SIDE_PX / Math.max(sensorWidthMm, sensorHeightMm);
  const width = Math.round(sensorWidthMm * scale);
  const height = Math.round(sensorHeightMm * scale);
  const { condition } = view.scene;
  const model = useMemo(() => skyModel(condition), [condition]);
  const working = view.answer.ok ? view.answer.value : null;
  useEffect(
    function draw() {
      const context = canvas.current?.getContext('2d');
      if (context && working !== null)
        drawFrame(context, { view, recipe: working.recipe, model, width, height });
    },
    [view, working, model, width, height],
  );
  if (working === null)
    return (
      <p className="gap no-frame">No predicted frame: at this minute there is no recipe to show.</p>
    );
  const time = clockTime(minuteMs, view.spot.zone);
  const settings = settingsText(working.recipe, working.filters, kit.cameras[view.setup.cameraId]);
  return (
    <figure className="predicted-frame">
      <canvas
        ref={canvas}
        width={width}
        height={height}
        role="img"
        aria-label={`Predicted frame at ${time}: ${settings}`}
        data-figure="predicted-frame"
      />
      <figcaption className="quiet">
        Predicted frame at {time}, computed: figures as grey cards; no clouds drawn, sky colour not
        shown. Dashed: the patch.
        {view.light.skyInFrame?.sunInFrame === true ? ' The sun itself clips at any hold.' : ''}
        {working.filters.some(({ kind }) => kind !== 'nd')
          ? ` ${filtersText(working.filters)} counted as even loss.`
          : ''}
      </figcaption>
    </figure>
  );
}
