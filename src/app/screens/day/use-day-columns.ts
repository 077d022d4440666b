import { useEffect, useRef, useState } from 'react';

import type { SetupColumn, SetupColumnInput } from '../../../core/plan/setup-column.ts';
import { useServices } from '../../state/services.ts';

export type AskedColumn = { readonly key: string; readonly input: SetupColumnInput };

/**
 * Columns from the worker by key, asked for in the order given and only when their question
 * changed. While a newer one is under way the last one stays.
 */
export function useDayColumns(asked: readonly AskedColumn[]): ReadonlyMap<string, SetupColumn> {
  const { compute } = useServices();
  const [columns, setColumns] = useState<ReadonlyMap<string, SetupColumn>>(new Map());
  const questions = useRef(new Map<string, string>());
  useEffect(
    function askForWhatChanged() {
      for (const { key, input } of asked) {
        const question = JSON.stringify(input);
        if (questions.current.get(key) === question) continue;
        questions.current.set(key, question);
        compute.request(`day ${key}`, { kind: 'setup-column', input }).then(
          (answer) => {
            if (answer === null || questions.current.get(key) !== question) return;
            setColumns((before) => new Map(before).set(key, answer));
          },
          (error: unknown) => {
            questions.current.delete(key);
            console.error(error);
          },
        );
      }
    },
    [compute, asked],
  );
  return columns;
}
