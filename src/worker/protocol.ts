import type { Alternative } from '../core/plan/alternatives.ts';
import type { FramePixels } from '../core/plan/frame-pixels.ts';
import type { HoldDay, HoldDayInput } from '../core/plan/hold-day.ts';
import type { FrameScene } from '../core/plan/predicted-frame.ts';
import type { ReExposure } from '../core/plan/re-exposed-photo.ts';
import type { SetupCaseInput } from '../core/plan/setup-case.ts';
import type { SetupColumn, SetupColumnInput } from '../core/plan/setup-column.ts';
import type { SetupFix } from '../core/plan/setup-fix.ts';
import type { SpreadFix } from '../core/plan/spread-fixes.ts';

/** What each kind of work is asked and what it answers, plain data only. */
type Jobs = {
  readonly 'setup-column': { readonly input: SetupColumnInput; readonly answer: SetupColumn };
  readonly 'setup-fixes': { readonly input: SetupCaseInput; readonly answer: readonly SetupFix[] };
  readonly 'spread-fixes': {
    readonly input: SetupCaseInput;
    readonly answer: readonly SpreadFix[];
  };
  readonly alternatives: {
    readonly input: SetupCaseInput;
    readonly answer: readonly Alternative[];
  };
  readonly 'hold-day': { readonly input: HoldDayInput; readonly answer: HoldDay | null };
  readonly 'predicted-frame': { readonly input: FrameScene; readonly answer: FramePixels };
  readonly 're-exposed-photo': {
    readonly input: { readonly photo: FramePixels; readonly asked: ReExposure };
    readonly answer: FramePixels;
  };
};

export type JobKind = keyof Jobs;

/** Work for the worker. */
export type Job = {
  readonly [Kind in JobKind]: { readonly kind: Kind; readonly input: Jobs[Kind]['input'] };
}[JobKind];

export type JobOf<Kind extends JobKind> = Extract<Job, { readonly kind: Kind }>;

export type JobAnswerOf<Kind extends JobKind> = Jobs[Kind]['answer'];

export type JobAnswer = JobAnswerOf<JobKind>;

export type Request = { readonly id: number; readonly job: Job };

export type Answer =
  | { readonly id: number; readonly ok: true; readonly answer: JobAnswer }
  | { readonly id: number; readonly ok: false; readonly message: string };
