import { useEffect, useMemo, useState } from 'react';

import type { HoldDay, HoldDayInput } from '../../../../core/plan/hold-day.ts';
import { inOrder } from '../../../../core/plan/order-key.ts';
import { setupsAt } from '../../../../core/plan/setup-light.ts';
import type { Kit } from '../../../../core/plan/kit.ts';
import type { Shoot } from '../../../../core/plan/shoot.ts';
import { useKit, useShoot } from '../../../state/documents.tsx';
import { holdDayInput } from '../../../state/hold-days.ts';
import { useServices } from '../../../state/services.ts';
import { sunDay } from '../sun-day.ts';
import { comparisonRow, type ComparisonRow } from './comparison-row.ts';

/** 'own': with the setup of each spot; else the id of the setup whose lights are carried to every spot. */
export type ComparedLights = string;

type Inputs = ReturnType<typeof comparedInputs>;
type Found = { readonly inputs: Inputs; readonly days: ReadonlyMap<string, HoldDay> };

const NONE_YET: Found['days'] = new Map();

/** One row for each spot; figures of the light come in as the worker finds them. */
export function useComparison(lights: ComparedLights): readonly ComparisonRow[] {
  const shoot = useShoot();
  const kit = useKit();
  const { compute } = useServices();
  const [found, setFound] = useState<Found | null>(null);
  const inputs = useMemo(() => comparedInputs(shoot, kit, lights), [shoot, kit, lights]);
  const suns = useMemo(
    () => new Map(inOrder(shoot.spots).map(([id, spot]) => [id, sunDay(spot, shoot.date)])),
    [shoot.spots, shoot.date],
  );
  const days = found?.inputs === inputs ? found.days : NONE_YET;
  useEffect(
    function askForDays() {
      let current = true;
      for (const [spotId, input] of inputs)
        void compute
          .request(`compare ${spotId}`, { kind: 'hold-day', input })
          .then((day) => {
            if (!current || day === null) return;
            setFound((before) => ({
              inputs,
              days: new Map(before?.inputs === inputs ? before.days : []).set(spotId, day),
            }));
          })
          .catch((error: unknown) => console.error(error));
      return () => {
        current = false;
      };
    },
    [compute, inputs],
  );
  return useMemo(
    () =>
      inOrder(shoot.spots).flatMap(([spotId, spot]) => {
        const sun = suns.get(spotId);
        if (sun === undefined) return [];
        const asked = inputs.has(spotId);
        return comparisonRow(spotId, spot, sun, asked ? (days.get(spotId) ?? null) : 'no-lights');
      }),
    [shoot.spots, suns, inputs, days],
  );
}

/** A spot without a setup of its own has no lights to judge, unless some are carried there. */
export function comparedInputs(
  shoot: Shoot,
  kit: Kit,
  lights: ComparedLights,
): ReadonlyMap<string, HoldDayInput> {
  const inputs = new Map<string, HoldDayInput>();
  for (const [spotId] of inOrder(shoot.spots)) {
    const carried = lights === 'own' ? undefined : shoot.setups[lights];
    const setup = carried ?? setupsAt(shoot, spotId)[0]?.[1];
    if (setup === undefined) continue;
    const there = { ...setup, spotId, framing: carried === undefined ? setup.framing : null };
    inputs.set(spotId, holdDayInput({ ...shoot, setups: { there } }, kit, 'there'));
  }
  return inputs;
}
