import { useMemo } from 'react';

import { setupLight } from '../../../core/plan/setup-light.ts';
import { recipeInput } from '../../../core/plan/setup-question.ts';
import {
  verdictOf,
  type SetupColumn,
  type SetupColumnInput,
  type Verdict,
} from '../../../core/plan/setup-column.ts';
import { judgeRecipe } from '../../../core/strobe/judge-recipe.ts';
import { civilDateOf, dayOfYear } from '../../../core/units/civil-time.ts';
import { setupColumnInput, useSetupColumn } from '../../state/columns.ts';
import { useKit, useShoot } from '../../state/documents.tsx';
import { holdWindows, type HoldWindow } from './hold-windows.ts';

export type HoldDay = {
  readonly column: SetupColumn;
  readonly windows: readonly HoldWindow[];
};

/** When a setup's lights hold the sky on the shoot's date; null until the worker has answered. */
export function useHoldWindows(setupId: string | null): HoldDay | null {
  const shoot = useShoot();
  const kit = useKit();
  const column = useSetupColumn(setupId);
  return useMemo(() => {
    const input = setupId === null ? null : setupColumnInput(shoot, kit, setupId);
    return column === null || input === null ? null : holdDay(input, column);
  }, [column, shoot, kit, setupId]);
}

/** The windows in a column, their ends searched with the light at the minute. */
export function holdDay({ question, scene }: SetupColumnInput, column: SetupColumn): HoldDay {
  const light = setupLight(scene);
  const verdictAt = (instantMs: number): Verdict => {
    if (question === null) return 'not-asked';
    const day = dayOfYear(civilDateOf(instantMs, scene.zone));
    const recipe = recipeInput(question, light({ instantMs, dayOfYear: day }));
    return recipe === null ? 'no-sky' : verdictOf(judgeRecipe(recipe));
  };
  return { column, windows: holdWindows(column, verdictAt) };
}
