import { useCallback, useEffect, useRef, useState } from 'react';

import type { PhoneAngles } from '../../../../core/skyline/phone-line-of-sight.ts';

export type OrientationReading = {
  readonly atMs: number;
  readonly angles: PhoneAngles;
  /** Counted from magnetic north, as phones do; else from wherever the phone lay. */
  readonly fromNorth: boolean;
};

export type OrientationState =
  | { readonly kind: 'off' }
  | { readonly kind: 'waiting' }
  | { readonly kind: 'live'; readonly fromNorth: boolean }
  | { readonly kind: 'none'; readonly sentence: string };

const SILENT_AFTER_MS = 3000;
const EVENTS = ['deviceorientationabsolute', 'deviceorientation'] as const;

const NONE = {
  insecure:
    'This page did not come over a secure connection, and browsers keep the orientation of the phone from such pages. Open it by https, or on this device.',
  absent: 'This browser does not tell the orientation of the device.',
  refused:
    'The orientation of the phone was not allowed. Allow motion and orientation for this page in the browser, then start again.',
  silent:
    'Nothing came from the orientation sensor for 3 seconds: this device has none, or the browser keeps it back.',
} as const;

type AskingConstructor = {
  readonly requestPermission?: (absolute?: boolean) => Promise<'granted' | 'denied'>;
};

/** The orientation of the phone once it is asked for by a press. */
export function useOrientation(onReading: (reading: OrientationReading) => void): {
  readonly state: OrientationState;
  readonly start: () => void;
  readonly stop: () => void;
} {
  const [state, setState] = useState<OrientationState>({ kind: 'off' });
  const [listening, setListening] = useState(false);
  const told = useRef(onReading);
  useEffect(function keepTelling() {
    told.current = onReading;
  });

  useEffect(
    function listen() {
      if (!listening) return undefined;
      let fromNorthSeen = false;
      const silence = setTimeout(() => {
        setListening(false);
        setState({ kind: 'none', sentence: NONE.silent });
      }, SILENT_AFTER_MS);
      const hear = (event: Event): void => {
        const reading = readingOf(event);
        if (reading === null || (fromNorthSeen && !reading.fromNorth)) return;
        clearTimeout(silence);
        fromNorthSeen ||= reading.fromNorth;
        setState((now) =>
          now.kind === 'live' && now.fromNorth === fromNorthSeen
            ? now
            : { kind: 'live', fromNorth: fromNorthSeen },
        );
        told.current(reading);
      };
      for (const name of EVENTS) window.addEventListener(name, hear);
      return () => {
        clearTimeout(silence);
        for (const name of EVENTS) window.removeEventListener(name, hear);
      };
    },
    [listening],
  );

  const start = useCallback((): void => {
    const sentence = !window.isSecureContext
      ? NONE.insecure
      : 'DeviceOrientationEvent' in window
        ? null
        : NONE.absent;
    if (sentence !== null) return setState({ kind: 'none', sentence });
    setState({ kind: 'waiting' });
    // Where permission must be asked for, it must be asked for within the press.
    const asked = (DeviceOrientationEvent as AskingConstructor).requestPermission?.(true);
    void (asked ?? Promise.resolve('granted' as const)).then(
      (answer) => {
        if (answer === 'granted') setListening(true);
        else setState({ kind: 'none', sentence: NONE.refused });
      },
      () => setState({ kind: 'none', sentence: NONE.refused }),
    );
  }, []);
  const stop = useCallback((): void => {
    setListening(false);
    setState({ kind: 'off' });
  }, []);
  return { state, start, stop };
}

function readingOf(event: Event): OrientationReading | null {
  const { alpha, beta, gamma, absolute } = event as DeviceOrientationEvent;
  if (alpha === null || beta === null || gamma === null) return null;
  return {
    atMs: event.timeStamp,
    angles: { alphaDeg: alpha, betaDeg: beta, gammaDeg: gamma },
    fromNorth: absolute || event.type === 'deviceorientationabsolute',
  };
}
