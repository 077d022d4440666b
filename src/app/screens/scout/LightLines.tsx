import { Fragment, type ReactNode } from 'react';

import type { LightLine } from './light-sentences.ts';

type LightLinesProps = {
  readonly title: string;
  readonly lines: readonly LightLine[];
  readonly sunInFrame: boolean;
  readonly children?: ReactNode;
};

/** Light on the date, line by line, with the caution that a sun in the frame asks for. */
export function LightLines({ title, lines, sunInFrame, children }: LightLinesProps): ReactNode {
  return (
    <section aria-labelledby="light-on">
      <h2 id="light-on">{title}</h2>
      <dl className="rows">
        {lines.map(({ name, figure, value, note }) => (
          <div key={figure}>
            <dt>{name}</dt>
            <dd>
              <span data-figure={figure}>{unbroken(value)}</span>
              {note === null ? null : <span className="quiet">{note}</span>}
            </dd>
          </div>
        ))}
      </dl>
      {children}
      {sunInFrame ? (
        <p className="caution" data-caution="sun">
          Never look at the sun through an optical finder or a long lens; ND filters and polarisers
          do not protect eyes.
        </p>
      ) : null}
    </section>
  );
}

/** A list of times breaks between them, never inside one. */
const unbroken = (value: string): ReactNode =>
  value.split(', ').map((part, at) => (
    <Fragment key={part}>
      {at > 0 ? ', ' : ''}
      <span className="unbroken">{part}</span>
    </Fragment>
  ));
