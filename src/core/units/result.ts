/** An answer, or the reason why there is none. */
export type Result<Value, Problem> =
  | { readonly ok: true; readonly value: Value }
  | { readonly ok: false; readonly problem: Problem };

export const ok = <Value>(value: Value): { readonly ok: true; readonly value: Value } => ({
  ok: true,
  value,
});

export const fail = <Problem>(
  problem: Problem,
): { readonly ok: false; readonly problem: Problem } => ({ ok: false, problem });
