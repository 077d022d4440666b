import { useMemo, type ReactNode } from 'react';

import { frameScene } from '../../../../core/plan/frame-scene.ts';
import type { Kit } from '../../../../core/plan/kit.ts';
import { projectedFraming } from '../../../../core/plan/picture-geometry.ts';
import type { SetupView, WorkingSetup } from '../../../../core/plan/setup-view.ts';
import { LOWEST_COLOURED_SUN_DEG } from '../../../../core/sky/sky-colour.ts';
import { clockTime } from '../../../../core/units/civil-time.ts';
import { settingsText } from '../../../ui/recipe-text.ts';
import { FrameCanvas, type FrameMark } from './FrameCanvas.tsx';
import { usePicture } from '../../../state/pictures.ts';

type ComputedFrameProps = {
  readonly view: SetupView;
  readonly working: WorkingSetup;
  readonly kit: Kit;
  readonly minuteMs: number;
};

const LONG_SIDE_PX = 1200;

/** Sky, ground and lit figures as the settings make them. */
export function ComputedFrame({ view, working, kit, minuteMs }: ComputedFrameProps): ReactNode {
  const { sensorWidthMm, sensorHeightMm } = projectedFraming(view.framing);
  const scale = LONG_SIDE_PX / Math.max(sensorWidthMm, sensorHeightMm);
  const widthPx = Math.round(sensorWidthMm * scale);
  const heightPx = Math.round(sensorHeightMm * scale);
  const job = useMemo(
    () => ({
      kind: 'predicted-frame' as const,
      input: frameScene(view, working, { widthPx, heightPx }),
    }),
    [view, working, widthPx, heightPx],
  );
  const pixels = usePicture(job);
  const { patch } = view.light;
  const mark = useMemo((): FrameMark | null => patch && { kind: 'rectangle', ...patch }, [patch]);
  const time = clockTime(minuteMs, view.spot.zone);
  const settings = settingsText(working.recipe, working.filters, kit.cameras[view.setup.cameraId]);
  return (
    <figure className="predicted-frame">
      <FrameCanvas
        pixels={pixels}
        widthPx={widthPx}
        heightPx={heightPx}
        label={`Predicted frame at ${time}: ${settings}`}
        mark={mark}
      />
      <figcaption className="quiet">
        Predicted frame at {time}. Computed: brightness and colour of the sky, ground, skyline, the
        light on skin, dark clothes and hair, white balance, clipping. Not in it: clouds, flare,
        noise, the camera’s own tone curve, faces and clothes of your people.{' '}
        {view.light.sun.apparentAltitudeDeg < LOWEST_COLOURED_SUN_DEG
          ? 'With the sun this low the sky keeps the colours of a sun half a degree up. '
          : ''}
        {view.light.skyInFrame?.sunInFrame === true ? 'The sun itself clips at any hold. ' : ''}
        Dashed: the patch.
      </figcaption>
    </figure>
  );
}
