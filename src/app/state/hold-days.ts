import { useEffect, useMemo, useState } from 'react';

import type { HoldDay, HoldDayInput } from '../../core/plan/hold-day.ts';
import type { Kit } from '../../core/plan/kit.ts';
import type { Shoot } from '../../core/plan/shoot.ts';
import { useKit, useShoot } from './documents.tsx';
import { useServices } from './services.ts';

const STEP_MIN = 10;

/** What the worker is asked; the ground stays on the page, each spot's skyline goes along. */
export const holdDayInput = (shoot: Shoot, kit: Kit, setupId: string): HoldDayInput => ({
  shoot: { ...shoot, obstacles: {}, outlineSets: {} },
  kit,
  setupId,
  stepMin: STEP_MIN,
});

/** When a setup's lights hold the sky on the shoot's date; null until the worker has answered. */
export function useHoldDay(setupId: string | null): HoldDay | null {
  const shoot = useShoot();
  const kit = useKit();
  const { compute } = useServices();
  const [last, setLast] = useState<{ readonly id: string; readonly day: HoldDay } | null>(null);
  const input = useMemo(
    () => (setupId === null ? null : holdDayInput(shoot, kit, setupId)),
    [shoot, kit, setupId],
  );
  useEffect(
    function askWorker() {
      if (input === null) return undefined;
      let current = true;
      compute
        .request(`hold ${input.setupId}`, { kind: 'hold-day', input })
        .then((day) => {
          if (current && day !== null) setLast({ id: input.setupId, day });
        })
        .catch((error: unknown) => console.error(error));
      return () => {
        current = false;
      };
    },
    [compute, input],
  );
  return setupId !== null && last?.id === setupId ? last.day : null;
}
