import { useEffect, useRef, useState } from 'react';

import type { AlignmentAnswer, AlignmentInput } from '../../../../core/plan/lit-alignments.ts';
import { useServices } from '../../../state/services.ts';

export type AlignmentSearch =
  | { readonly kind: 'not-asked' }
  | { readonly kind: 'running'; readonly share: number }
  | { readonly kind: 'done'; readonly answer: AlignmentAnswer }
  | { readonly kind: 'failed'; readonly message: string };

const NOT_ASKED: AlignmentSearch = { kind: 'not-asked' };

/** Searches in the worker on request; what is found stands as long as its question does. */
export function useAlignment(input: AlignmentInput): {
  readonly search: AlignmentSearch;
  readonly find: () => void;
  readonly cancel: () => void;
} {
  const { ground } = useServices();
  const question = JSON.stringify(input);
  const [last, setLast] = useState<{ question: string; search: AlignmentSearch } | null>(null);
  const running = useRef<{ question: string; controller: AbortController } | null>(null);
  const giveUp = (): void => running.current?.controller.abort();
  useEffect(
    function dropOldSearch() {
      if (running.current?.question !== question) running.current?.controller.abort();
    },
    [question],
  );
  useEffect(function dropSearchOnClose() {
    return () => running.current?.controller.abort();
  }, []);

  const find = (): void => {
    giveUp();
    const controller = new AbortController();
    const { signal } = controller;
    running.current = { question, controller };
    const put = (search: AlignmentSearch): void => {
      if (!signal.aborted) setLast({ question, search });
    };
    put({ kind: 'running', share: 0 });
    void ground
      .run('alignment', input, { signal, onProgress: (share) => put({ kind: 'running', share }) })
      .then((ran) => {
        if (ran.ok) put({ kind: 'done', answer: ran.value });
        else if (ran.problem.kind === 'failed')
          put({ kind: 'failed', message: ran.problem.message });
      });
  };
  const cancel = (): void => {
    giveUp();
    setLast(null);
  };
  return { search: last?.question === question ? last.search : NOT_ASKED, find, cancel };
}
