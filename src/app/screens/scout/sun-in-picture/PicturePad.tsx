import { useMemo, useRef, type KeyboardEvent, type PointerEvent, type ReactNode } from 'react';

import type { Framing, PicturePoint } from '../../../../core/sky/framing.ts';
import type { Skyline } from '../../../../core/skyline/skyline.ts';
import { pointOfKey, roundedPoint } from './picture-point.ts';
import { circleInPicture, edgeInPicture } from './picture-shapes.ts';

type PicturePadProps = {
  readonly framing: Framing;
  readonly skyline: Skyline;
  readonly point: PicturePoint;
  readonly toleranceDeg: number;
  readonly label: string;
  /** Where the point is, in words. */
  readonly valueText: string;
  readonly onPoint: (point: PicturePoint) => void;
};

/** The framing with the skyline's silhouette; the point is set by pointer or by arrow keys. */
export function PicturePad(props: PicturePadProps): ReactNode {
  const { framing, skyline, point, toleranceDeg, label, valueText, onPoint } = props;
  const pad = useRef<HTMLDivElement>(null);
  const ground = useMemo(() => corners(edgeInPicture(framing, skyline)), [framing, skyline]);
  const circle = corners(circleInPicture(framing, { centre: point, radiusDeg: toleranceDeg }));
  const sides = framing.sensorWidthMm / framing.sensorHeightMm;

  const takeFrom = (event: PointerEvent): void => {
    const box = pad.current?.getBoundingClientRect();
    if (box === undefined || box.width === 0 || box.height === 0) return;
    onPoint(
      roundedPoint({
        xFraction: (event.clientX - box.left) / box.width - 0.5,
        yFraction: 0.5 - (event.clientY - box.top) / box.height,
      }),
    );
  };
  const onKeyDown = (event: KeyboardEvent): void => {
    const moved = pointOfKey(point, event);
    if (moved === null) return;
    event.preventDefault();
    onPoint(moved);
  };

  return (
    <div
      ref={pad}
      className="picture-pad"
      style={{ aspectRatio: sides, maxWidth: `calc(15rem * ${sides})` }}
      role="slider"
      tabIndex={0}
      aria-label={label}
      aria-roledescription="point in the picture, moved across and up"
      aria-valuemin={-50}
      aria-valuemax={50}
      aria-valuenow={Math.round(100 * point.xFraction)}
      aria-valuetext={valueText}
      data-field="alignment-point"
      onKeyDown={onKeyDown}
      onPointerDown={(event) => {
        event.currentTarget.setPointerCapture(event.pointerId);
        takeFrom(event);
      }}
      onPointerMove={(event) => {
        if (event.currentTarget.hasPointerCapture(event.pointerId)) takeFrom(event);
      }}
    >
      <svg viewBox="-0.5 -0.5 1 1" preserveAspectRatio="none" aria-hidden="true">
        {ground === '' ? null : <polygon className="ground" points={`${ground} 99,99 -99,99`} />}
        <polygon className="halo" points={circle} />
        <polygon className="tolerance" points={circle} />
      </svg>
      <i
        style={{ left: `${50 + 100 * point.xFraction}%`, top: `${50 - 100 * point.yFraction}%` }}
      />
    </div>
  );
}

/** In the picture's own fractions, y down. */
const corners = (points: readonly PicturePoint[]): string =>
  points.map(({ xFraction, yFraction }) => `${xFraction},${-yFraction}`).join(' ');
