import { create } from 'zustand';

import type { GeoPoint } from '../../core/place/geo-point.ts';

/** What this tab looks at; nothing of it is part of the shoot. */
type View = {
  readonly spotId: string | null;
  readonly setupId: string | null;
  /** The minute everything is shown for. */
  readonly minuteMs: number | null;
  /** A place that the map shows and marks, though no spot stands there. */
  readonly shownPlace: { readonly point: GeoPoint; readonly name: string } | null;
  /** The first screen has stood for a while: what it could do without may be fetched. */
  readonly settled: boolean;
  /** The last thing said to the user, for screen readers too. */
  readonly said: string;
};

export const useView = create<View>(() => ({
  spotId: null,
  setupId: null,
  minuteMs: null,
  shownPlace: null,
  settled: false,
  said: '',
}));

export const look = (at: Partial<Omit<View, 'said'>>): void => useView.setState(at);

export const say = (said: string): void => useView.setState({ said });
