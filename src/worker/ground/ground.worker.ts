import { GROUND_JOBS } from './ground-jobs.ts';
import type { GroundReply, GroundRequest } from './protocol.ts';
import { runGroundJob, type GroundWork } from './run-ground-job.ts';

const cancelled = new Set<number>();

const post = (reply: GroundReply): void => self.postMessage(reply);

const letMessagesIn = (): Promise<void> => new Promise((resume) => setTimeout(resume, 0));

self.addEventListener('message', ({ data }: MessageEvent<GroundRequest>) => {
  if (data.kind === 'cancel') cancelled.add(data.id);
  else void work(data);
});

async function work({
  id,
  kind,
  input,
}: Exclude<GroundRequest, { kind: 'cancel' }>): Promise<void> {
  const begin = GROUND_JOBS[kind] as (asked: typeof input) => GroundWork<never>;
  try {
    const run = await runGroundJob(begin(input), {
      onProgress: (share) => post({ id, kind: 'progress', share }),
      isCancelled: () => cancelled.has(id),
      letMessagesIn,
    });
    post({ id, ...run });
  } catch (error) {
    post({ id, kind: 'failed', message: error instanceof Error ? error.message : String(error) });
  } finally {
    cancelled.delete(id);
  }
}
