import type { Answer, Request } from './protocol.ts';
import { runJob } from './run-job.ts';

const post = (answer: Answer, transfer: Transferable[]): void =>
  self.postMessage(answer, { transfer });

self.addEventListener('message', ({ data: { id, job } }: MessageEvent<Request>) => {
  try {
    const answer = runJob(job);
    post({ id, ok: true, answer }, buffersOf(answer ?? {}));
  } catch (error) {
    post({ id, ok: false, message: error instanceof Error ? error.message : String(error) }, []);
  }
});

const buffersOf = (answer: object): ArrayBuffer[] =>
  Object.values(answer).flatMap((field: unknown) =>
    ArrayBuffer.isView(field) && field.buffer instanceof ArrayBuffer ? [field.buffer] : [],
  );
