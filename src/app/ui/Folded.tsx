import { Suspense, useState, type ReactNode } from 'react';

type FoldedProps = {
  readonly summary: string;
  /** What tests and keyboards open it by. */
  readonly open: string;
  /** Opens it by itself, once there is something to be seen. */
  readonly byItself?: boolean;
  readonly children: ReactNode;
};

/** A part that is fetched and drawn when it is first opened. */
export function Folded({ summary, open, byItself = false, children }: FoldedProps): ReactNode {
  const [opened, setOpened] = useState(false);
  return (
    <details open={byItself} onToggle={(event) => event.currentTarget.open && setOpened(true)}>
      <summary data-open={open}>{summary}</summary>
      {opened || byItself ? (
        <Suspense fallback={<p data-loading>Opening…</p>}>{children}</Suspense>
      ) : null}
    </details>
  );
}
