/** Runs work that tells how far it is through to its answer. */
export function runOrder<Answer>(work: Generator<number, Answer>): Answer {
  let step = work.next();
  while (step.done !== true) step = work.next();
  return step.value;
}

/** A part of the work, its progress a stretch of the whole. */
export function* part<Answer>(
  work: Generator<number, Answer>,
  stretch: { readonly from: number; readonly to: number },
): Generator<number, Answer> {
  for (;;) {
    const step = work.next();
    if (step.done === true) return step.value;
    yield stretch.from + (stretch.to - stretch.from) * step.value;
  }
}
