import './plan-sketch.css';
import { useMemo, useRef, useState, type PointerEvent, type ReactNode } from 'react';

import { editLight } from '../../../../core/plan/edits.ts';
import {
  FARTHEST_M,
  NEAREST_M,
  planSketch,
  standAt,
  type SketchLight,
  type SketchPoint,
} from '../../../../core/plan/plan-sketch.ts';
import { standPosition } from '../../../../core/plan/row-of-faces.ts';
import type { SetupView } from '../../../../core/plan/setup-view.ts';
import { useEditShoot } from '../../../state/documents.tsx';
import { metres, signedTenths } from '../../../ui/figure-text.ts';
import { ROLE_NAMES } from '../../../ui/recipe-text.ts';
import { LightBar } from './LightBar.tsx';

type PlanSketchProps = { readonly setupId: string; readonly view: SetupView };

/** Where a light is while it is being moved. */
type Moved = { readonly lightId: string; readonly distanceM: number; readonly angleDeg: number };

/** The setup from above, to scale; lights are dragged, or moved with the arrow keys. */
export function PlanSketch({ setupId, view }: PlanSketchProps): ReactNode {
  const edit = useEditShoot();
  const svg = useRef<SVGSVGElement>(null);
  const [moved, setMoved] = useState<Moved | null>(null);
  const sketch = useMemo(() => planSketch(view), [view]);
  const { setup } = view;
  const { extent, cameraDistanceM, halfFieldM } = sketch;
  const { sideM, backM, frontM } = extent;
  const fontM = Math.max(2 * sideM, backM + frontM) / 34;

  const keep = (to: Moved | null): void => {
    setMoved(null);
    const light = to === null ? undefined : setup.lights[to.lightId];
    if (to === null || light === undefined) return;
    const { distanceM, angleDeg } = to;
    if (distanceM === light.distanceM && angleDeg === light.angleDeg) return;
    edit(
      `move the ${ROLE_NAMES[light.role].toLowerCase()} of ${setup.name}`,
      editLight(setupId, to.lightId, { distanceM, angleDeg }),
    );
  };
  const pointOf = (event: PointerEvent): SketchPoint | null => {
    const matrix = svg.current?.getScreenCTM();
    if (!matrix) return null;
    const { x, y } = new DOMPoint(event.clientX, event.clientY).matrixTransform(matrix.inverse());
    return { rightM: x, towardsCameraM: y };
  };
  const drag = (lightId: string, event: PointerEvent): void => {
    const point = pointOf(event);
    const heightM = setup.lights[lightId]?.heightM;
    if (point !== null && heightM !== undefined)
      setMoved({ lightId, ...standAt(point, heightM, setup) });
  };
  const nudge = (light: SketchLight, turnDeg: number, byM: number): void => {
    const from = moved?.lightId === light.lightId ? moved : light;
    const angleDeg = ((((from.angleDeg + turnDeg + 180) % 360) + 360) % 360) - 180;
    const distanceM = Math.min(FARTHEST_M, Math.max(NEAREST_M, from.distanceM + byM));
    setMoved({ lightId: light.lightId, angleDeg, distanceM: Math.round(distanceM * 100) / 100 });
  };

  const shown = sketch.lights.map((light) => {
    if (moved?.lightId !== light.lightId) return light;
    const heightM = setup.lights[light.lightId]?.heightM ?? 0;
    return { ...light, ...moved, ...standPosition({ ...moved, heightM }, setup) };
  });
  return (
    <figure className="plan-sketch">
      <svg
        ref={svg}
        viewBox={`${-sideM} ${-backM} ${2 * sideM} ${backM + frontM}`}
        role="group"
        aria-label="The setup from above, to scale"
        data-figure="plan-sketch"
      >
        <path
          className="field"
          d={`M${-halfFieldM * 2} ${-cameraDistanceM} L0 ${cameraDistanceM} L${halfFieldM * 2} ${-cameraDistanceM}`}
        />
        <line className="camera" x1={-0.25} x2={0.25} y1={cameraDistanceM} y2={cameraDistanceM} />
        <text className="note" x={0.35} y={cameraDistanceM + 0.1} style={{ fontSize: fontM }}>
          camera, {metres(cameraDistanceM)}
        </text>
        {sketch.faces.map(({ rightM, towardsCameraM, stops }, at) => (
          <g key={at}>
            <circle className="face" cx={rightM} cy={towardsCameraM} r={0.11} />
            <text
              className="note"
              x={rightM}
              y={towardsCameraM - 0.25}
              textAnchor="middle"
              style={{ fontSize: fontM }}
              data-figure={`face-stops-${at}`}
            >
              {signedTenths(stops)}
            </text>
          </g>
        ))}
        {shown.map((light) => (
          <LightBar
            key={light.lightId}
            light={light}
            fontSizeM={fontM}
            onDrag={(event) => drag(light.lightId, event)}
            onNudge={(turnDeg, byM) => nudge(light, turnDeg, byM)}
            onKeep={() => keep(moved)}
          />
        ))}
      </svg>
      <figcaption className="quiet">
        From above, to scale: lights as wide as they are, numbers at the faces in stops of the key
        against the middle of the front row. Drag a light, or choose it and use the arrow keys.
      </figcaption>
    </figure>
  );
}
