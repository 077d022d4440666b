import type { ReactNode } from 'react';

/** The line drawing on a button of the map, 18 units square. */
export function MapSign({ path }: { readonly path: string }): ReactNode {
  return (
    <svg viewBox="0 0 18 18" width="18" height="18" aria-hidden="true">
      <path d={path} fill="none" stroke="currentColor" strokeWidth="1.75" />
    </svg>
  );
}
