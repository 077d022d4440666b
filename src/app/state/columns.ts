import { useEffect, useMemo, useState } from 'react';

import type { SkyCondition } from '../../core/daylight/sky-condition.ts';
import type { SetupColumn, SetupColumnInput } from '../../core/plan/setup-column.ts';
import { sceneOf, setupScene } from '../../core/plan/setup-light.ts';
import { setupQuestion } from '../../core/plan/setup-lights.ts';
import type { Kit } from '../../core/plan/kit.ts';
import type { Shoot } from '../../core/plan/shoot.ts';
import { useKit, useShoot } from './documents.tsx';
import { useServices } from './services.ts';

export const COLUMN_STEP_MIN = 10;

const FACE_HEIGHT_M = 1.65;

/** What the worker is asked for one setup's day; null when the setup or its spot is gone. */
export function setupColumnInput(shoot: Shoot, kit: Kit, setupId: string): SetupColumnInput | null {
  const setup = shoot.setups[setupId];
  const spot = setup && shoot.spots[setup.spotId];
  if (setup === undefined || spot === undefined) return null;
  const question = setupQuestion(setup, spot, kit);
  return {
    scene: setupScene(shoot, setup, spot),
    question: question.ok ? question.value : null,
    date: shoot.date,
    stepMin: COLUMN_STEP_MIN,
  };
}

/** What the worker is asked for a spot's day without any lights. */
export function spotColumnInput(shoot: Shoot, spotId: string): SetupColumnInput | null {
  const spot = shoot.spots[spotId];
  if (spot === undefined) return null;
  return {
    scene: sceneOf(spot, spot.framing, {
      patch: null,
      people: 1,
      spacingM: 0,
      faceHeightM: FACE_HEIGHT_M,
      condition: shoot.condition,
    }),
    question: null,
    date: shoot.date,
    stepMin: COLUMN_STEP_MIN,
  };
}

/**
 * A column from the worker. While a newer one of the same key is under way the last one stays;
 * null until the first arrives.
 */
export function useColumn(key: string, input: SetupColumnInput | null): SetupColumn | null {
  const { compute } = useServices();
  const [last, setLast] = useState<{ readonly key: string; readonly column: SetupColumn } | null>(
    null,
  );
  const asked = useMemo(() => JSON.stringify(input), [input]);
  useEffect(
    function askWorker() {
      const wanted = JSON.parse(asked) as SetupColumnInput | null;
      if (wanted === null) return undefined;
      let current = true;
      void compute
        .request(key, { kind: 'setup-column', input: wanted })
        .then((answer) => {
          if (current && answer !== null) setLast({ key, column: answer });
        })
        .catch((error: unknown) => console.error(error));
      return () => {
        current = false;
      };
    },
    [compute, key, asked],
  );
  return input !== null && last?.key === key ? last.column : null;
}

/** The column of a setup of the open shoot, under its sky condition or another. */
export function useSetupColumn(
  setupId: string | null,
  condition?: SkyCondition,
): SetupColumn | null {
  const shoot = useShoot();
  const kit = useKit();
  const input = useMemo(() => {
    if (setupId === null) return null;
    const under = condition === undefined ? shoot : { ...shoot, condition };
    return setupColumnInput(under, kit, setupId);
  }, [shoot, kit, setupId, condition]);
  return useColumn(`setup ${setupId ?? ''} ${condition ?? ''}`, input);
}
