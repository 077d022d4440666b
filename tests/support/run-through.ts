/** What a generator answers in the end, and what it yielded on its way. */
export function runThrough<Step, Answer>(
  work: Generator<Step, Answer>,
): { readonly answer: Answer; readonly steps: readonly Step[] } {
  const steps: Step[] = [];
  for (;;) {
    const next = work.next();
    if (next.done === true) return { answer: next.value, steps };
    steps.push(next.value);
  }
}
