import { Suspense, useEffect, useState, type ReactNode } from 'react';

import { InAndOut } from './lazy-sections.ts';

type Given = { readonly files: readonly File[]; readonly text: string };

type Open = { readonly given: Given | null };

/** Opens spots in and out; also files dropped anywhere on the screen and text pasted outside a field. */
export function InOutButton({ spotId }: { readonly spotId: string | null }): ReactNode {
  const [open, setOpen] = useState<Open | null>(null);
  const [hear] = useState(
    () =>
      (given: Given): void =>
        setOpen({ given }),
  );
  useGiven(hear);
  return (
    <>
      <button type="button" data-open-in-out onClick={() => setOpen({ given: null })}>
        In and out
      </button>
      {open === null ? null : (
        <Suspense fallback={null}>
          <InAndOut given={open.given} spotId={spotId} onClose={() => setOpen(null)} />
        </Suspense>
      )}
    </>
  );
}

/** Hears drops and pastes while the screen stands. */
function useGiven(onGiven: (given: Given) => void): void {
  useEffect(
    function hearDropsAndPastes() {
      const over = (event: DragEvent): void => {
        if (event.dataTransfer?.types.includes('Files') === true) event.preventDefault();
      };
      const drop = (event: DragEvent): void => {
        const files = [...(event.dataTransfer?.files ?? [])];
        if (files.length === 0 || event.defaultPrevented) return;
        event.preventDefault();
        onGiven({ files, text: '' });
      };
      const paste = (event: ClipboardEvent): void => {
        const { target } = event;
        if (target instanceof Element && target.closest('input, textarea, dialog') !== null) return;
        const text = event.clipboardData?.getData('text/plain') ?? '';
        const files = [...(event.clipboardData?.files ?? [])];
        if (files.length > 0 || text.trim() !== '') onGiven({ files, text });
      };
      window.addEventListener('dragover', over);
      window.addEventListener('drop', drop);
      window.addEventListener('paste', paste);
      return () => {
        window.removeEventListener('dragover', over);
        window.removeEventListener('drop', drop);
        window.removeEventListener('paste', paste);
      };
    },
    [onGiven],
  );
}
