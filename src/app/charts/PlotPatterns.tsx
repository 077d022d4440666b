import type { ReactNode } from 'react';

/** The fills of a column's plot, told apart by their drawing alone; once on a page. */
export const PlotPatterns = (): ReactNode => (
  <svg className="plot-patterns" width="0" height="0" aria-hidden="true" focusable="false">
    <defs>
      <pattern id="plot-out-of-reach" width="9" height="9" patternUnits="userSpaceOnUse">
        <rect className="ground" width="9" height="9" />
        <path className="stroke" d="M-2 11 11 -2M-2 2 2 -2M7 11 11 7" />
      </pattern>
      <pattern id="plot-too-dark" width="7" height="7" patternUnits="userSpaceOnUse">
        <circle className="dot" cx="1.75" cy="1.75" r="1" />
        <circle className="dot" cx="5.25" cy="5.25" r="1" />
      </pattern>
      <pattern id="plot-too-bright" width="8" height="6" patternUnits="userSpaceOnUse">
        <path className="stroke" d="M0 3H8" />
      </pattern>
    </defs>
  </svg>
);
