import type { KeyboardEvent, PointerEvent, ReactNode } from 'react';

import type { SketchLight } from '../../../../core/plan/plan-sketch.ts';
import { metres } from '../../../ui/figure-text.ts';
import { ROLE_NAMES } from '../../../ui/recipe-text.ts';

type LightBarProps = {
  readonly light: SketchLight;
  readonly fontSizeM: number;
  readonly onDrag: (event: PointerEvent) => void;
  readonly onNudge: (turnDeg: number, byM: number) => void;
  /** Once for each drag or held key. */
  readonly onKeep: () => void;
};

const TURN_DEG = 1;
const STEP_M = 0.1;
const FAST = 5;

/** A light as a bar of its own width, square to its way to the subject. */
export function LightBar(props: LightBarProps): ReactNode {
  const { light, fontSizeM, onDrag, onNudge, onKeep } = props;
  const { rightM, towardsCameraM, widthM, role, distanceM, angleDeg } = light;
  const awayM = Math.hypot(rightM, towardsCameraM) || 1;
  const [acrossX, acrossY] = [-towardsCameraM / awayM, rightM / awayM];
  const half = Math.max(0.08, widthM / 2);
  const name = ROLE_NAMES[role];
  const words = `${name}, ${metres(distanceM)}, ${Math.abs(angleDeg)}° to the camera’s ${angleDeg < 0 ? 'left' : 'right'}`;
  const press = (event: KeyboardEvent): void => {
    const by = event.shiftKey ? FAST : 1;
    const moves: Readonly<Record<string, readonly [number, number]>> = {
      ArrowLeft: [-TURN_DEG * by, 0],
      ArrowRight: [TURN_DEG * by, 0],
      ArrowUp: [0, -STEP_M * by],
      ArrowDown: [0, STEP_M * by],
    };
    const move = moves[event.key];
    if (move === undefined) return;
    event.preventDefault();
    onNudge(...move);
  };
  return (
    <g
      className={light.isInFrame ? 'light in-frame' : 'light'}
      role="slider"
      tabIndex={0}
      aria-label={`${name}: left and right turn it round the subject, up and down change its distance`}
      aria-valuemin={0.2}
      aria-valuemax={30}
      aria-valuenow={distanceM}
      aria-valuetext={words}
      data-sketch-light={light.lightId}
      onPointerDown={(event) => {
        event.currentTarget.setPointerCapture(event.pointerId);
        onDrag(event);
      }}
      onPointerMove={(event) => {
        if (event.currentTarget.hasPointerCapture(event.pointerId)) onDrag(event);
      }}
      onPointerUp={onKeep}
      onPointerCancel={onKeep}
      onKeyDown={press}
      onKeyUp={onKeep}
      onBlur={onKeep}
    >
      <line className="way" x1={rightM} y1={towardsCameraM} x2={0} y2={0} />
      <line
        className={light.isBounced ? 'bar bounced' : 'bar'}
        x1={rightM - half * acrossX}
        y1={towardsCameraM - half * acrossY}
        x2={rightM + half * acrossX}
        y2={towardsCameraM + half * acrossY}
      />
      <circle className="grip" cx={rightM} cy={towardsCameraM} r={fontSizeM * 1.2} />
      <text
        className="note"
        x={rightM}
        y={towardsCameraM + (towardsCameraM < 0 ? -fontSizeM * 0.7 : fontSizeM * 1.4)}
        textAnchor={rightM > 0 ? 'end' : 'start'}
        style={{ fontSize: fontSizeM }}
      >
        {name} {metres(distanceM)}
        {light.isInFrame ? ', in the picture' : ''}
      </text>
    </g>
  );
}
