import { useEffect, useState } from 'react';

import type { SetupCaseInput } from '../../../core/plan/setup-case.ts';
import { useServices, type Services } from '../../state/services.ts';

/** What the worker found for exactly what is asked now, or where it stands. */
export type WorkedOut<Answer> =
  | { readonly state: 'waiting' | 'failed' }
  | { readonly state: 'done'; readonly answer: Answer };

type Kept<Answer> = { readonly asked: SetupCaseInput; readonly out: WorkedOut<Answer> };

const WAITING = { state: 'waiting' } as const;

/** Asks the worker; the latest question wins and an older answer is never shown for it. */
export function useWorkedOut<Answer>(
  asked: SetupCaseInput | null,
  ask: (compute: Services['compute'], asked: SetupCaseInput) => Promise<Answer | null>,
): WorkedOut<Answer> {
  const { compute } = useServices();
  const [kept, setKept] = useState<Kept<Answer> | null>(null);
  useEffect(
    function askWorker() {
      if (asked === null) return undefined;
      let current = true;
      ask(compute, asked)
        .then((answer) => {
          if (current && answer !== null) setKept({ asked, out: { state: 'done', answer } });
        })
        .catch((error: unknown) => {
          console.error(error);
          if (current) setKept({ asked, out: { state: 'failed' } });
        });
      return () => {
        current = false;
      };
    },
    [compute, asked, ask],
  );
  return kept !== null && kept.asked === asked ? kept.out : WAITING;
}
