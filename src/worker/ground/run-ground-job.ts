/** Work that tells how far it has come, 0 to 1, each time it lets others in. */
export type GroundWork<Answer> = AsyncGenerator<number, Answer> | Generator<number, Answer>;

export type GroundRun<Answer> =
  | { readonly kind: 'done'; readonly answer: Answer }
  | { readonly kind: 'cancelled' };

/**
 * Drives work to its end. After each step it lets waiting messages in, so that a cancellation
 * is heard; cancelled work is closed and never resumed.
 */
export async function runGroundJob<Answer>(
  work: GroundWork<Answer>,
  hooks: {
    readonly onProgress: (share: number) => void;
    readonly isCancelled: () => boolean;
    readonly letMessagesIn: () => Promise<void>;
  },
): Promise<GroundRun<Answer>> {
  for (;;) {
    if (hooks.isCancelled()) {
      await work.return?.(undefined as never);
      return { kind: 'cancelled' };
    }
    const step = await work.next();
    if (step.done === true) return { kind: 'done', answer: step.value };
    hooks.onProgress(step.value);
    await hooks.letMessagesIn();
  }
}
