import { Suspense, useState, type ReactNode } from 'react';

type FoldedProps = {
  readonly summary: string;
  /** What tests and keyboards open it by. */
  readonly open: string;
  readonly children: ReactNode;
};

/** A part that is fetched and drawn when it is first opened. */
export function Folded({ summary, open, children }: FoldedProps): ReactNode {
  const [opened, setOpened] = useState(false);
  return (
    <details onToggle={(event) => event.currentTarget.open && setOpened(true)}>
      <summary data-open={open}>{summary}</summary>
      {opened ? <Suspense fallback={<p data-loading>Opening…</p>}>{children}</Suspense> : null}
    </details>
  );
}
