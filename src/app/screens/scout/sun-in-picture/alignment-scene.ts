import { sceneOf, setupScene, type SetupScene } from '../../../../core/plan/setup-light.ts';
import type { Setup } from '../../../../core/plan/setup-schema.ts';
import type { Shoot, Spot } from '../../../../core/plan/shoot.ts';

const FACE_HEIGHT_M = 1.65;

/** The picture that is asked about: the setup's as it is taken, else the spot's own. */
export const alignmentScene = (shoot: Shoot, spot: Spot, setup: Setup | null): SetupScene =>
  setup === null
    ? sceneOf(spot, spot.framing, {
        patch: null,
        people: 1,
        spacingM: 0,
        faceHeightM: FACE_HEIGHT_M,
        condition: shoot.condition,
      })
    : setupScene(shoot, setup, spot);

/** Which framing the point is placed in. */
export const framingText = (setup: Setup | null): string =>
  setup === null
    ? 'In the spot’s framing.'
    : setup.framing === null
      ? `In the spot’s framing, with the lights of ${setup.name}.`
      : `In the framing and with the lights of ${setup.name}.`;

/** What the skyline is made of, each source with what is noted of it. */
export function skylineOrigins(shoot: Shoot, spot: Spot): string {
  const sources = [
    Object.keys(spot.skyline).length > 0 ? `trace (${noted(spot.skylineOrigin)})` : null,
    spot.terrain === null ? null : `terrain (${noted(spot.terrain.origin)})`,
    spot.skylineNow !== undefined &&
    Object.keys(shoot.obstacles).length + Object.keys(shoot.outlineSets).length > 0
      ? 'obstacles on the map'
      : null,
  ].filter((source) => source !== null);
  return sources.length === 0 ? 'flat, nothing hides the low sky' : sources.join(', ');
}

const noted = (origin: string): string => (origin === '' ? 'origin not noted' : origin);
