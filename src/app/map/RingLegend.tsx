import type { ReactNode } from 'react';
import { useId } from 'react';
import type { EvRange } from './ring-tone.ts';
import { toneSteps } from './ring-tone.ts';

export type RingLegendProps = {
  readonly ringRangeEv: EvRange;
  /** Local clock time the rings are shown for, '20:06'. */
  readonly atTime: string;
};

const TONES = toneSteps(9);

/** What the shades of the sky rings mean. */
export function RingLegend({ ringRangeEv, atTime }: RingLegendProps): ReactNode {
  const gradientId = useId();
  return (
    <div className="ring-legend">
      <p>sky brightness round each spot, 8 to 20° up, at {atTime}</p>
      <p className="ring-legend-scale">
        <svg width="200" height="10" aria-hidden="true">
          <linearGradient id={gradientId}>
            {TONES.map((tone, index) => (
              <stop key={tone} offset={index / (TONES.length - 1)} stopColor={tone} />
            ))}
          </linearGradient>
          <rect width="100%" height="100%" fill={`url(#${gradientId})`} />
        </svg>
        <span>
          EV {evText(ringRangeEv.minEv)} to {evText(ringRangeEv.maxEv)}
        </span>
        <span className="ring-legend-ground">
          <svg width="10" height="10" aria-hidden="true">
            <rect width="10" height="10" className="ground" />
          </svg>
          ground
        </span>
      </p>
    </div>
  );
}

const evText = (ev: number): string => String(Number(ev.toFixed(1))).replace('-', '−');
