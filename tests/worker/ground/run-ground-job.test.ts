import { describe, expect, test } from 'vitest';

import { groundClient, type GroundPostbox } from '../../../src/worker/ground/ground-client.ts';
import type { GroundReply, GroundRequest } from '../../../src/worker/ground/protocol.ts';
import { runGroundJob } from '../../../src/worker/ground/run-ground-job.ts';

const quietly = {
  onProgress: (): void => undefined,
  isCancelled: (): boolean => false,
  letMessagesIn: (): Promise<void> => Promise.resolve(),
};

function* counting(steps: number, done: number[]): Generator<number, string> {
  for (let step = 1; step <= steps; step += 1) {
    done.push(step);
    yield step / steps;
  }
  return 'counted';
}

describe('long work tells how far it is and hears a cancellation between its steps', () => {
  test('each step is told, and the answer comes last', async () => {
    const shares: number[] = [];
    const run = await runGroundJob(counting(4, []), {
      ...quietly,
      onProgress: (share) => shares.push(share),
    });
    expect(shares).toEqual([0.25, 0.5, 0.75, 1]);
    expect(run).toEqual({ kind: 'done', answer: 'counted' });
  });

  test('cancelled after two steps, it takes no third and closes what was open', async () => {
    const done: number[] = [];
    let closed = false;
    function* guarded(): Generator<number, string> {
      try {
        return yield* counting(9, done);
      } finally {
        closed = true;
      }
    }
    const run = await runGroundJob(guarded(), { ...quietly, isCancelled: () => done.length >= 2 });
    expect(run).toEqual({ kind: 'cancelled' });
    expect(done).toEqual([1, 2]);
    expect(closed).toBe(true);
  });
});

describe('the page asks the ground worker', () => {
  const heard: GroundRequest[] = [];
  type Listener = (event: { readonly data: GroundReply; readonly message?: string }) => void;
  const box = (): GroundPostbox & {
    readonly answer: (reply: GroundReply) => void;
    readonly breakDown: (message: string) => void;
  } => {
    const listeners: Record<string, Listener[]> = { message: [], error: [] };
    return {
      postMessage: (request) => heard.push(request),
      addEventListener: (type: string, listener: unknown) =>
        listeners[type]?.push(listener as Listener),
      answer: (data) => listeners.message?.forEach((listener) => listener({ data })),
      breakDown: (message) =>
        listeners.error?.forEach((listener) => listener({ data: {} as GroundReply, message })),
    };
  };

  test('the worker starts with the first work, and answers reach who asked', async () => {
    const made = box();
    let starts = 0;
    const client = groundClient(() => {
      starts += 1;
      return made;
    });
    expect(starts).toBe(0);
    const first = client.run('shadow-union', {} as never);
    const second = client.run('shadow-union', {} as never);
    expect(starts).toBe(1);
    made.answer({ id: 2, kind: 'failed', message: 'too many corners' });
    made.answer({ id: 1, kind: 'done', answer: 'area' as never });
    expect(await first).toEqual({ ok: true, value: 'area' });
    expect(await second).toMatchObject({
      ok: false,
      problem: { kind: 'failed', message: 'too many corners' },
    });
  });

  test('an aborted question is answered at once, the worker told, a late answer dropped', async () => {
    const made = box();
    const abort = new AbortController();
    const client = groundClient(() => made);
    const asked = client.run('shadow-union', {} as never, { signal: abort.signal });
    abort.abort();
    expect(await asked).toEqual({ ok: false, problem: { kind: 'cancelled' } });
    expect(heard.at(-1)).toEqual({ id: 1, kind: 'cancel' });
    made.answer({ id: 1, kind: 'done', answer: 'late' as never });
    const aborted = await client.run('shadow-union', {} as never, { signal: abort.signal });
    expect(aborted.ok).toBe(false);
  });

  test('a worker that breaks answers everything it was asked, and the next question starts another', async () => {
    const boxes = [box(), box()];
    let starts = 0;
    const client = groundClient(() => boxes[starts++] ?? box());
    const asked = client.run('shadow-union', {} as never);
    boxes[0]?.breakDown('out of memory');
    expect(await asked).toMatchObject({ problem: { kind: 'failed', message: 'out of memory' } });
    void client.run('shadow-union', {} as never);
    expect(starts).toBe(2);
  });
});
