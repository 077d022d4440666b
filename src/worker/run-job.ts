import { setupColumn } from '../core/plan/setup-column.ts';
import type { Job, JobAnswer } from './protocol.ts';

/** All the thinking of the worker. */
export function runJob(job: Job): JobAnswer {
  switch (job.kind) {
    case 'setup-column':
      return setupColumn(job.input);
  }
}
