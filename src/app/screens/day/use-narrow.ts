import { useSyncExternalStore } from 'react';

const NARROW = '(max-width: 720px)';

/** Whether the window has room for one column only. */
export const useNarrow = (): boolean =>
  useSyncExternalStore(
    (changed) => {
      const media = window.matchMedia(NARROW);
      media.addEventListener('change', changed);
      return () => media.removeEventListener('change', changed);
    },
    () => window.matchMedia(NARROW).matches,
  );
