import { fail, ok, type Result } from '../../core/units/result.ts';
import type {
  GroundAnswer,
  GroundInput,
  GroundKind,
  GroundReply,
  GroundRequest,
} from './protocol.ts';

/** The side of the ground worker that a page talks to. */
export type GroundPostbox = {
  readonly postMessage: (request: GroundRequest) => void;
  readonly addEventListener: {
    (type: 'message', listener: (event: { readonly data: GroundReply }) => void): void;
    /** The worker itself broke: nothing it was asked will be answered. */
    (type: 'error', listener: (event: { readonly message?: string }) => void): void;
  };
};

export type GroundProblem =
  | { readonly kind: 'cancelled' }
  | { readonly kind: 'failed'; readonly message: string };

export type GroundClient = {
  readonly run: <Kind extends GroundKind>(
    kind: Kind,
    input: GroundInput<Kind>,
    hooks?: { readonly onProgress?: (share: number) => void; readonly signal?: AbortSignal },
  ) => Promise<Result<GroundAnswer<Kind>, GroundProblem>>;
};

type Open = {
  readonly onProgress: (share: number) => void;
  readonly settle: (answer: Result<never, GroundProblem>) => void;
};

/** The worker is started with the first work. */
export function groundClient(start: () => GroundPostbox): GroundClient {
  const open = new Map<number, Open>();
  let postbox: GroundPostbox | null = null;
  let lastId = 0;

  const hear = ({ data }: { readonly data: GroundReply }): void => {
    const asked = open.get(data.id);
    if (asked === undefined) return;
    if (data.kind === 'progress') return asked.onProgress(data.share);
    open.delete(data.id);
    asked.settle(data.kind === 'done' ? (ok(data.answer) as never) : fail(data));
  };

  const giveUp = ({ message }: { readonly message?: string }): void => {
    postbox = null;
    const waiting = [...open.values()];
    open.clear();
    for (const { settle } of waiting)
      settle(fail({ kind: 'failed', message: message ?? 'the work stopped by itself' }));
  };

  const started = (): GroundPostbox => {
    if (postbox === null) {
      postbox = start();
      postbox.addEventListener('message', hear);
      postbox.addEventListener('error', giveUp);
    }
    return postbox;
  };

  return {
    run: (kind, input, { onProgress = () => undefined, signal } = {}) =>
      new Promise((settle) => {
        if (signal?.aborted === true) return settle(fail({ kind: 'cancelled' }));
        lastId += 1;
        const id = lastId;
        open.set(id, { onProgress, settle });
        started().postMessage({ id, kind, input });
        signal?.addEventListener('abort', () => {
          if (!open.delete(id)) return;
          started().postMessage({ id, kind: 'cancel' });
          settle(fail({ kind: 'cancelled' }));
        });
      }),
  };
}
