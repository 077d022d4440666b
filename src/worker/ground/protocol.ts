import type { GROUND_JOBS } from './ground-jobs.ts';

type Jobs = typeof GROUND_JOBS;

export type GroundKind = keyof Jobs;

export type GroundInput<Kind extends GroundKind> = Parameters<Jobs[Kind]>[0];

type AnswerOf<Work> =
  Work extends Generator<number, infer Answer>
    ? Answer
    : Work extends AsyncGenerator<number, infer Answer>
      ? Answer
      : never;

export type GroundAnswer<Kind extends GroundKind> = AnswerOf<ReturnType<Jobs[Kind]>>;

/** Plain data only. */
export type GroundRequest =
  | { readonly id: number; readonly kind: GroundKind; readonly input: GroundInput<GroundKind> }
  | { readonly id: number; readonly kind: 'cancel' };

export type GroundReply =
  | { readonly id: number; readonly kind: 'progress'; readonly share: number }
  | { readonly id: number; readonly kind: 'done'; readonly answer: GroundAnswer<GroundKind> }
  | { readonly id: number; readonly kind: 'cancelled' }
  | { readonly id: number; readonly kind: 'failed'; readonly message: string };
