import { useEffect, useState } from 'react';

import type { SetupCaseInput } from '../../../core/plan/setup-case.ts';
import { useServices, type Services } from '../../state/services.ts';

type Found<Answer> = { readonly asked: SetupCaseInput; readonly answer: Answer };

export type WorkedOut<Answer> = {
  /** Where the answer to what is asked now stands. */
  readonly state: 'waiting' | 'failed' | 'done';
  /** The last answer and what it was asked for; of an older question until the state is done. */
  readonly last: Found<Answer> | null;
};

/** Asks the worker; the latest question wins. Null asks nothing yet. */
export function useWorkedOut<Answer>(
  asked: SetupCaseInput | null,
  ask: (compute: Services['compute'], asked: SetupCaseInput) => Promise<Answer | null>,
): WorkedOut<Answer> {
  const { compute } = useServices();
  const [last, setLast] = useState<Found<Answer> | null>(null);
  const [failed, setFailed] = useState<SetupCaseInput | null>(null);
  useEffect(
    function askWorker() {
      if (asked === null) return undefined;
      let current = true;
      ask(compute, withoutGround(asked))
        .then((answer) => {
          if (current && answer !== null) setLast({ asked, answer });
        })
        .catch((error: unknown) => {
          console.error(error);
          if (current) setFailed(asked);
        });
      return () => {
        current = false;
      };
    },
    [compute, asked, ask],
  );
  if (asked !== null && last?.asked === asked) return { state: 'done', last };
  return { state: asked !== null && failed === asked ? 'failed' : 'waiting', last };
}

/** The skyline stands with each spot; what it came from stays on the page. */
const withoutGround = (asked: SetupCaseInput): SetupCaseInput => ({
  ...asked,
  shoot: { ...asked.shoot, obstacles: {}, outlineSets: {} },
});
