import { useEffect, useId, useMemo, useRef, type ReactNode } from 'react';

import type { SkyCondition } from '../../../core/daylight/sky-condition.ts';
import type { SetupLight, SetupScene } from '../../../core/plan/setup-light.ts';
import { ev100FromLuminance } from '../../../core/exposure/exposure-value.ts';
import { SkylineTextures, TextureLegend, type SkylineMaker } from './skyline/SkylineTextures.tsx';
import { bearingText, tenths } from '../../ui/figure-text.ts';
import {
  framingOutline,
  lowSkyReader,
  patchOutline,
  skylineSteps,
  stretchOutline,
  STRIP_COLUMNS,
  STRIP_ROWS,
  stripTopDeg,
  toneOf,
  type StripPoint,
} from './skyline-picture.ts';

const COMPASS = ['N', 'E', 'S', 'W', 'N'];

type SkylineStripProps = {
  readonly scene: SetupScene;
  readonly light: SetupLight;
  readonly condition: SkyCondition;
  readonly origin: string;
  /** Who makes which stretch of the skyline. */
  readonly makers?: readonly SkylineMaker[];
};

/** The low sky all round in true tones over the skyline, with the framing as it is projected. */
export function SkylineStrip(props: SkylineStripProps): ReactNode {
  const { scene, light, condition, origin, makers = [] } = props;
  const { framing, skyline } = scene;
  const id = useId();
  const topDeg = stripTopDeg(framing, skyline);
  const canvas = useRef<HTMLCanvasElement>(null);
  const readLowSky = useMemo(() => lowSkyReader(condition, topDeg), [condition, topDeg]);
  const luminance = useMemo(() => readLowSky(light), [readLowSky, light]);
  const card = cardOf(light, luminance);
  useEffect(
    function drawTones() {
      const context = canvas.current?.getContext('2d');
      if (!context) return;
      const tones = context.createImageData(STRIP_COLUMNS, STRIP_ROWS);
      luminance.forEach((cdM2, at) => {
        const tone = toneOf(cdM2, card.ev);
        tones.data.set([tone, tone, tone, 255], 4 * at);
      });
      context.putImageData(tones, 0, 0);
    },
    [luminance, card.ev],
  );

  const at = (points: readonly StripPoint[], shiftDeg: number): string =>
    points.map((point) => `${point.azimuthDeg + shiftDeg},${topDeg - point.altitudeDeg}`).join(' ');
  const copies = (points: readonly StripPoint[], className: string): ReactNode =>
    points.length === 0
      ? null
      : [-360, 0, 360].map((shiftDeg) => (
          <polygon
            key={`${className} ${shiftDeg}`}
            className={className}
            points={at(points, shiftDeg)}
          />
        ));
  const ground = useMemo(() => skylineSteps(skyline), [skyline]);
  const frame = useMemo(() => framingOutline(framing), [framing]);
  const patch = useMemo(
    () => (light.patch === null ? [] : patchOutline(framing, light.patch)),
    [framing, light.patch],
  );

  return (
    <figure className="skyline-strip">
      <div
        className="picture"
        role="img"
        aria-label={`The low sky from north round to north, up to ${topDeg}°, over the skyline; the framing looks ${bearingText(framing.bearingDeg)}`}
      >
        <canvas ref={canvas} width={STRIP_COLUMNS} height={STRIP_ROWS} />
        <svg viewBox={`0 0 360 ${topDeg}`} preserveAspectRatio="none" aria-hidden="true">
          <polygon
            className="ground"
            points={`0,${topDeg + 1} ${at(ground, 0)} 360,${topDeg + 1}`}
          />
          <SkylineTextures id={id} />
          {makers.map(({ fromDeg, toDeg, by }) =>
            by === null ? null : (
              <polygon
                key={fromDeg}
                fill={`url(#${id}${by})`}
                data-made-by={by}
                points={at(stretchOutline(ground, fromDeg, toDeg), 0)}
              />
            ),
          )}
          {copies(frame, 'halo')}
          {copies(frame, 'frame')}
          {copies(patch, 'patch')}
        </svg>
        <span className="top">{topDeg}°</span>
        {COMPASS.map((letter, quarter) => (
          <b key={`${letter} ${quarter}`} style={{ left: `${25 * quarter}%` }}>
            {letter}
          </b>
        ))}
      </div>
      <figcaption className="quiet">
        mid grey is {card.name}, EV {tenths(card.ev)}; white clips 2.5 stops above it.{' '}
        <span data-figure="skyline-origin">{originText(skyline.length, origin)}</span>
        <TextureLegend id={id} makers={makers} />
      </figcaption>
    </figure>
  );
}

const originText = (points: number, origin: string): string =>
  points === 0
    ? 'Skyline: flat, nothing hides the low sky.'
    : `Skyline: ${origin === '' ? 'origin not noted' : origin}.`;

/** The luminance that is drawn as the grey card. */
function cardOf(
  light: SetupLight,
  luminanceCdM2: Float64Array,
): { readonly ev: number; readonly name: string } {
  const sky = light.skyInFrame;
  if (sky !== null && !sky.patchIsFrame) return { ev: sky.patchEv, name: 'the patch' };
  if (sky !== null) return { ev: sky.meanEv, name: 'the mean of the sky in frame' };
  const mean = luminanceCdM2.reduce((sum, cdM2) => sum + cdM2, 0) / luminanceCdM2.length;
  return { ev: ev100FromLuminance(mean), name: 'the mean of the low sky' };
}
