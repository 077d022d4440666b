import type { TileLayer } from 'leaflet';
import { useEffect, useState } from 'react';

export type TileAnswers = {
  /** Of the tiles asked for since the view last came to rest. */
  readonly loaded: number;
  readonly failed: number;
  /** Some are waited for longer than usual. */
  readonly slow: boolean;
};

/** A server that is well answers all tiles of a view in less. */
const SLOW_AFTER_MS = 5000;

const NOTHING_YET: TileAnswers = { loaded: 0, failed: 0, slow: false };

/** How the server of a layer answers. */
export const useTileAnswers = (layer: TileLayer): TileAnswers => {
  const [answers, setAnswers] = useState(NOTHING_YET);
  useEffect(
    function watchAnswers() {
      let patience: ReturnType<typeof setTimeout> | undefined;
      const bePatient = (): void => {
        clearTimeout(patience);
        patience = setTimeout(() => setAnswers((so) => ({ ...so, slow: true })), SLOW_AFTER_MS);
      };
      const on = {
        loading: () => {
          setAnswers(NOTHING_YET);
          bePatient();
        },
        tileload: () => setAnswers((so) => ({ ...so, loaded: so.loaded + 1 })),
        tileerror: () => setAnswers((so) => ({ ...so, failed: so.failed + 1 })),
        load: () => {
          clearTimeout(patience);
          setAnswers((so) => ({ ...so, slow: false }));
        },
      };
      layer.on(on);
      if (layer.isLoading()) bePatient();
      return function stopWatching() {
        clearTimeout(patience);
        layer.off(on);
      };
    },
    [layer],
  );
  return answers;
};

/** What is to be said of it; null when all is well. */
export const tileAnswersText = ({ loaded, failed, slow }: TileAnswers): string | null => {
  if (failed > 0) return loaded > 0 ? 'some map tiles did not answer' : 'map tiles did not answer';
  return slow ? 'map tiles are slow to answer' : null;
};
