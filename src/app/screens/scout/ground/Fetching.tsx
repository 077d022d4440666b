import { useEffect, useState, type ReactNode } from 'react';

import { outlinesFromNetwork } from '../../../state/outline-files.ts';
import { OutlinePreview, type LookedOutlines } from './OutlinePreview.tsx';

type FetchingProps = {
  readonly asked: Omit<Parameters<typeof outlinesFromNetwork>[0], 'signal'>;
  readonly spotName: string;
  readonly host: string;
  readonly dated: string;
};

type Fetched =
  | { readonly kind: 'nothing' }
  | { readonly kind: 'asking'; readonly stop: AbortController }
  | { readonly kind: 'failed'; readonly why: string }
  | { readonly kind: 'there'; readonly looked: LookedOutlines };

/** One question to the server, its cancelling, its failure, or what it would bring. */
export function Fetching({ asked, spotName, host, dated }: FetchingProps): ReactNode {
  const [fetched, setFetched] = useState<Fetched>({ kind: 'nothing' });
  const asking = fetched.kind === 'asking' ? fetched.stop : null;
  useEffect(
    function stopWhenLeft() {
      return () => asking?.abort();
    },
    [asking],
  );
  const ask = async (): Promise<void> => {
    const stop = new AbortController();
    setFetched({ kind: 'asking', stop });
    const read = await outlinesFromNetwork({ ...asked, signal: stop.signal });
    if (stop.signal.aborted) return;
    const name = `${asked.halfSideM} m round ${spotName}`;
    setFetched(
      read.ok
        ? { kind: 'there', looked: { name, outlines: read.value } }
        : { kind: 'failed', why: read.problem },
    );
  };
  return (
    <div role="group" aria-label="Fetching outlines">
      {asking === null ? (
        <button type="button" data-fetch-footprints onClick={() => void ask()}>
          Ask {host} for the outlines round {spotName}
        </button>
      ) : (
        <p className="buttons" role="status">
          Asking {host}…
          <button
            type="button"
            data-cancel-footprints
            onClick={() => {
              asking.abort();
              setFetched({ kind: 'nothing' });
            }}
          >
            Cancel
          </button>
        </p>
      )}
      {fetched.kind === 'failed' ? (
        <p className="fault" role="alert" data-note="footprints-failed">
          Nothing was taken in. {fetched.why}
        </p>
      ) : null}
      {fetched.kind === 'there' ? (
        <OutlinePreview
          looked={fetched.looked}
          dated={dated}
          onDone={() => setFetched({ kind: 'nothing' })}
        />
      ) : null}
    </div>
  );
}
