import type { ReactNode } from 'react';

import type { SourceName } from './skyline-sources.ts';

export type SkylineMaker = {
  readonly fromDeg: number;
  readonly toDeg: number;
  readonly by: SourceName | null;
};

const LINES: Readonly<Record<SourceName, string>> = {
  terrain: '',
  obstacles: 'M1.5 0V2',
  trace: 'M0 1H3',
};
const WORDS: Readonly<Record<SourceName, string>> = {
  terrain: 'terrain',
  obstacles: 'obstacles',
  trace: 'trace',
};

/** Textures by which the ground of a skyline says who made it: plain, upright lines, level lines. */
export const SkylineTextures = ({ id }: { readonly id: string }): ReactNode => (
  <defs>
    {Object.entries(LINES).map(([name, path]) => (
      <pattern
        key={name}
        id={`${id}${name}`}
        className="skyline-texture"
        width="3"
        height="2"
        patternUnits="userSpaceOnUse"
      >
        <path d={path} />
      </pattern>
    ))}
  </defs>
);

type TextureLegendProps = { readonly id: string; readonly makers: readonly SkylineMaker[] };

/** Names the textures that are there. */
export function TextureLegend({ id, makers }: TextureLegendProps): ReactNode {
  const there = (Object.keys(WORDS) as SourceName[]).filter((name) =>
    makers.some(({ by }) => by === name),
  );
  return there.length === 0 ? null : (
    <span className="skyline-legend" data-figure="skyline-legend">
      {there.map((name) => (
        <span key={name}>
          <svg viewBox="0 0 18 6" preserveAspectRatio="none" aria-hidden="true">
            <rect width="18" height="6" className="ground" />
            <rect width="18" height="6" fill={`url(#${id}${name})`} />
          </svg>{' '}
          {WORDS[name]}
        </span>
      ))}
    </span>
  );
}
