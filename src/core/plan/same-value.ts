/** Whether two values made of plain objects, lists, texts, numbers, booleans and null say the same. */
export function sameValue(first: unknown, second: unknown): boolean {
  if (first === second) return true;
  if (!isNode(first) || !isNode(second)) return false;
  if (Array.isArray(first) !== Array.isArray(second)) return false;
  const keys = Object.keys(first);
  return (
    keys.length === Object.keys(second).length &&
    keys.every((key) => Object.hasOwn(second, key) && sameValue(first[key], second[key]))
  );
}

/** The value under a path of own keys; undefined where the path leads nowhere. */
export function valueAt(value: unknown, path: readonly PropertyKey[]): unknown {
  let at = value;
  for (const key of path) {
    if (!isNode(at) || !Object.hasOwn(at, key)) return undefined;
    at = at[key];
  }
  return at;
}

type Node = Record<PropertyKey, unknown>;

/** Whether a value has keys: a plain object or a list. */
export const isNode = (value: unknown): value is Node =>
  typeof value === 'object' && value !== null;
