import type { Answer, Job, JobAnswer, JobAnswerOf, JobKind, JobOf, Request } from './protocol.ts';

/** The side of a worker that a page talks to. */
export type Postbox = {
  readonly postMessage: (request: Request) => void;
  readonly addEventListener: (
    type: 'message',
    listener: (event: { readonly data: Answer }) => void,
  ) => void;
};

export type ComputeClient = {
  /**
   * Runs a job. One job per key waits at a time: a newer one takes its place, and the older
   * promise answers null.
   */
  readonly request: <Kind extends JobKind>(
    key: string,
    job: JobOf<Kind>,
  ) => Promise<JobAnswerOf<Kind> | null>;
};

type Waiting = {
  readonly job: Job;
  readonly settle: (answer: JobAnswer | null) => void;
  readonly refuse: (error: Error) => void;
};

export function computeClient(postbox: Postbox): ComputeClient {
  const waiting = new Map<string, Waiting>();
  let running: (Waiting & { readonly id: number }) | null = null;
  let lastId = 0;

  const next = (): void => {
    const first = waiting.entries().next().value;
    if (running !== null || first === undefined) return;
    const [key, entry] = first;
    waiting.delete(key);
    lastId += 1;
    running = { ...entry, id: lastId };
    postbox.postMessage({ id: lastId, job: entry.job });
  };

  postbox.addEventListener('message', ({ data }) => {
    if (running?.id !== data.id) return;
    const done = running;
    running = null;
    if (data.ok) done.settle(data.answer);
    else done.refuse(new Error(data.message));
    next();
  });

  return {
    request: <Kind extends JobKind>(key: string, job: JobOf<Kind>) =>
      new Promise<JobAnswerOf<Kind> | null>((settle, refuse) => {
        waiting.get(key)?.settle(null);
        waiting.set(key, {
          job,
          settle,
          refuse,
        });
        next();
      }),
  };
}
