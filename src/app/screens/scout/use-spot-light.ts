import { useMemo } from 'react';

import {
  sceneOf,
  setupLight,
  type SetupLight,
  type SetupScene,
} from '../../../core/plan/setup-light.ts';
import type { Setup } from '../../../core/plan/setup-schema.ts';
import type { Shoot, Spot } from '../../../core/plan/shoot.ts';
import { civilDateOf, dayOfYear } from '../../../core/units/civil-time.ts';

const FACE_HEIGHT_M = 1.65;

export type SeenLight = { readonly scene: SetupScene; readonly light: SetupLight };

/**
 * The light of a spot's own framing at a minute. Patch and face are those of its setup, as long as
 * the setup is taken with this framing.
 */
export function useSpotLight(
  shoot: Shoot,
  spot: Spot,
  setup: Setup | null,
  minuteMs: number,
): SeenLight {
  const { condition } = shoot;
  const asked = useMemo(() => {
    const taken = setup?.framing === null ? setup : null;
    return JSON.stringify(
      sceneOf(spot, spot.framing, {
        patch: taken?.patch ?? null,
        people: taken?.people ?? 1,
        spacingM: taken?.spacingM ?? 0,
        faceHeightM: taken?.faceHeightM ?? FACE_HEIGHT_M,
        condition,
      }),
    );
  }, [spot, setup, condition]);
  const scene = useMemo(() => JSON.parse(asked) as SetupScene, [asked]);
  const read = useMemo(() => setupLight(scene), [scene]);
  const light = useMemo(
    () => read({ instantMs: minuteMs, dayOfYear: dayOfYear(civilDateOf(minuteMs, scene.zone)) }),
    [read, minuteMs, scene.zone],
  );
  return { scene, light };
}
