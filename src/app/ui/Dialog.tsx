import { useEffect, useRef, type ReactNode } from 'react';

type DialogProps = {
  readonly title: string;
  readonly onClose: () => void;
  readonly children: ReactNode;
};

/** A modal sheet; Escape and the close button leave it. */
export function Dialog({ title, onClose, children }: DialogProps): ReactNode {
  const dialog = useRef<HTMLDialogElement>(null);
  useEffect(function openModally() {
    const element = dialog.current;
    element?.showModal();
    return () => element?.close();
  }, []);
  return (
    <dialog ref={dialog} className="sheet" aria-label={title} onCancel={onClose}>
      <header>
        <h2>{title}</h2>
        <button type="button" onClick={onClose}>
          Close
        </button>
      </header>
      {children}
    </dialog>
  );
}
