import { alternatives } from '../core/plan/alternatives.ts';
import { holdDay } from '../core/plan/hold-day.ts';
import { predictedFrame } from '../core/plan/predicted-frame.ts';
import { reExposedPhoto } from '../core/plan/re-exposed-photo.ts';
import { setupColumn } from '../core/plan/setup-column.ts';
import { setupFixes } from '../core/plan/setup-fixes.ts';
import { spreadFixes } from '../core/plan/spread-fixes.ts';
import type { Job, JobAnswer } from './protocol.ts';

/** All the thinking of the worker. */
export function runJob(job: Job): JobAnswer {
  switch (job.kind) {
    case 'setup-column':
      return setupColumn(job.input);
    case 'setup-fixes':
      return setupFixes(job.input);
    case 'spread-fixes':
      return spreadFixes(job.input);
    case 'alternatives':
      return alternatives(job.input);
    case 'hold-day':
      return holdDay(job.input);
    case 'predicted-frame':
      return predictedFrame(job.input);
    case 're-exposed-photo':
      return reExposedPhoto(job.input.photo, job.input.asked);
  }
}
