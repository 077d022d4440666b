import { useEffect } from 'react';

import { fetchEdits } from '../state/fetch-edits.ts';
import { look } from '../state/view.ts';

/** The code of each screen, fetched when it is first shown or when the first one stands. */
export const SCREEN_MODULES = {
  scout: () => import('../screens/scout/ScoutScreen.tsx'),
  day: () => import('../screens/day/DayScreen.tsx'),
  setup: () => import('../screens/setup/SetupScreen.tsx'),
  kit: () => import('../screens/kit/KitScreen.tsx'),
  callSheet: () => import('../screens/call-sheet/CallSheetScreen.tsx'),
  shootSheet: () => import('./ShootSheet.tsx'),
  edits: fetchEdits,
  newVersion: () => import('./NewVersion.tsx'),
} as const;

const LOOK_AGAIN_MS = 250;
/** The first screen has the network and the processor to itself so long. */
const AFTER_FIRST_FIGURES_MS = 3000;

/** Fetches the other screens once the first has drawn its figures: the network may go later. */
export function useOtherScreens(): void {
  useEffect(function fetchOtherScreens() {
    let later: ReturnType<typeof setTimeout> | undefined;
    const waiting = setInterval(() => {
      if (document.querySelector('[data-first-figures="drawn"]') === null) return;
      clearInterval(waiting);
      later = setTimeout(() => {
        // What fails now is asked for again when it is shown.
        for (const load of Object.values(SCREEN_MODULES)) void load().catch(() => undefined);
        look({ settled: true });
      }, AFTER_FIRST_FIGURES_MS);
    }, LOOK_AGAIN_MS);
    return () => {
      clearInterval(waiting);
      clearTimeout(later);
    };
  }, []);
}
