import { useEffect, useState } from 'react';

const SETTLED_MS = 150;

/** A value once it has stood still for a moment; null while it moves. */
export function useSettled<Value>(value: Value): Value | null {
  const [settled, setSettled] = useState<Value | null>(null);
  useEffect(
    function waitUntilStill() {
      const timer = setTimeout(() => setSettled(value), SETTLED_MS);
      return () => clearTimeout(timer);
    },
    [value],
  );
  return settled === value ? settled : null;
}
