import type { ReactNode } from 'react';

import type { SpanKind } from './verdict-spans.ts';

type PlotLegendProps = {
  /** Kinds of spans that occur; the rare one is named only where it does. */
  readonly kinds: ReadonlySet<SpanKind>;
  readonly twoStates: boolean;
  readonly otherReference: boolean;
};

/** Names every mark of the columns. */
export const PlotLegend = ({ kinds, twoStates, otherReference }: PlotLegendProps): ReactNode => (
  <ul className="plot-legend" aria-label="What the marks mean">
    <Mark name="sky in frame, darkest to brightest twentieth (EV, ISO 100)">
      <rect className="margin" width="100%" height="100%" />
      <rect className="band" y="25%" width="100%" height="50%" />
    </Mark>
    <Mark name="its spread">
      <rect className="margin" width="100%" height="100%" />
    </Mark>
    <Mark name="marked patch">
      <path className="patch" d="M0 7H30" />
    </Mark>
    {otherReference ? (
      <Mark name="what the hold is counted from">
        <path className="reference" d="M0 7H30" />
      </Mark>
    ) : null}
    <Mark
      name={twoStates ? 'ambient on the subject, sun hidden to sun out' : 'ambient on the subject'}
    >
      {twoStates ? <rect className="ambient-between" width="100%" height="100%" /> : null}
      <path className="ambient" d="M0 7H30" />
    </Mark>
    <Mark name="reach of the setup’s lights">
      <path className="reach" d="M15 0V14" />
    </Mark>
    <Mark name="out of reach">
      <rect className="framed" width="100%" height="100%" fill="url(#plot-out-of-reach)" />
    </Mark>
    <Mark name="too dark">
      <rect className="framed" width="100%" height="100%" fill="url(#plot-too-dark)" />
    </Mark>
    {kinds.has('too-bright') ? (
      <Mark name="too bright for dials and ND">
        <rect className="framed" width="100%" height="100%" fill="url(#plot-too-bright)" />
      </Mark>
    ) : null}
  </ul>
);

const Mark = ({
  name,
  children,
}: {
  readonly name: string;
  readonly children: ReactNode;
}): ReactNode => (
  <li>
    <svg className="column-plot" width="30" height="14" aria-hidden="true" focusable="false">
      {children}
    </svg>
    {name}
  </li>
);
