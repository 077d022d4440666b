import type { SetupColumn, SetupColumnInput } from '../core/plan/setup-column.ts';

/** Work for the worker, plain data only. */
export type Job = { readonly kind: 'setup-column'; readonly input: SetupColumnInput };

export type JobAnswer = SetupColumn;

export type Request = { readonly id: number; readonly job: Job };

export type Answer =
  | { readonly id: number; readonly ok: true; readonly answer: JobAnswer }
  | { readonly id: number; readonly ok: false; readonly message: string };
