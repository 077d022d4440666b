import { create } from 'zustand';

/** What this tab looks at; nothing of it is part of the shoot. */
type View = {
  readonly spotId: string | null;
  readonly setupId: string | null;
  /** The minute everything is shown for. */
  readonly minuteMs: number | null;
  /** The last thing said to the user, for screen readers too. */
  readonly said: string;
};

export const useView = create<View>(() => ({
  spotId: null,
  setupId: null,
  minuteMs: null,
  said: '',
}));

export const look = (at: Partial<Omit<View, 'said'>>): void => useView.setState(at);

export const say = (said: string): void => useView.setState({ said });
