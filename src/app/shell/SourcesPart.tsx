import type { ReactNode } from 'react';

import { SOURCES } from '../../core/units/sources.ts';

/** The publications behind the figures, as the code cites them; there without a network too. */
export const SourcesPart = (): ReactNode => (
  <section aria-label="Where the numbers come from">
    <details>
      <summary>Where the numbers come from</summary>
      <ul className="sources">
        {Object.entries(SOURCES).map(([key, publication]) => (
          <li key={key}>{publication}</li>
        ))}
      </ul>
    </details>
  </section>
);
