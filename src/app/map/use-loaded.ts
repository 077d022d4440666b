import { useEffect, useEffectEvent, useState } from 'react';

export type Loaded<Value> = { readonly value: Value | null; readonly failed: boolean };

/**
 * Loads once for each key, and not while the key is null; the last value stays until the next one
 * is there. An answer of null counts as failed.
 */
export const useLoaded = <Key extends string, Value>(
  key: Key | null,
  load: (key: Key) => Promise<Value | null>,
): Loaded<Value> => {
  const [loaded, setLoaded] = useState<Loaded<Value>>({ value: null, failed: false });
  const start = useEffectEvent(load);
  useEffect(
    function loadForKey() {
      if (key === null) return undefined;
      let wanted = true;
      const settle = (value: Value | null): void => {
        if (wanted)
          setLoaded((held) =>
            value === null ? { ...held, failed: true } : { value, failed: false },
          );
      };
      start(key).then(settle, () => settle(null));
      return function forget() {
        wanted = false;
      };
    },
    [key],
  );
  return loaded;
};
