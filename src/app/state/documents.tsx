import { createContext, useCallback, useContext, useEffect, useState, type ReactNode } from 'react';

import type { Edit } from '../../core/plan/edits.ts';
import type { Kit } from '../../core/plan/kit.ts';
import type { Shoot } from '../../core/plan/shoot.ts';
import { describeFault } from '../../core/plan/check-document.ts';
import type { ReadProblem, ShootRepository } from '../../storage/shoot-repository.ts';
import type { Result } from '../../core/units/result.ts';
import { useServices } from './services.ts';
import { useGrounded } from './use-grounded.ts';
import { say } from './view.ts';

type Documents = { readonly shoot: Shoot; readonly kit: Kit };

const DocumentsContext = createContext<Documents | null>(null);

type DocumentsProviderProps = {
  readonly shootId: string;
  readonly kitId: string;
  readonly waiting: ReactNode;
  readonly children: ReactNode;
};

/** Keeps the open shoot and the kit live, also when another tab changes them. */
export function DocumentsProvider(props: DocumentsProviderProps): ReactNode {
  const { shootId, kitId, waiting, children } = props;
  const { repository } = useServices();
  const [shoot, setShoot] = useState<Result<Shoot, ReadProblem> | null>(null);
  const [kit, setKit] = useState<Result<Kit, ReadProblem> | null>(null);
  useEffect(
    function observeShoot() {
      return repository.observe('shoot', shootId, setShoot);
    },
    [repository, shootId],
  );
  useEffect(
    function observeKit() {
      return repository.observe('kit', kitId, setKit);
    },
    [repository, kitId],
  );
  const grounded = useGrounded(shoot?.ok === true ? shoot.value : null);
  if (shoot === null || kit === null) return waiting;
  if (!shoot.ok) return <NotOpened what="This shoot" problem={shoot.problem} />;
  if (!kit.ok) return <NotOpened what="The kit" problem={kit.problem} />;
  if (grounded === null || grounded.id !== shootId) return waiting;
  return (
    <DocumentsContext value={{ shoot: grounded, kit: kit.value }}>{children}</DocumentsContext>
  );
}

const NotOpened = ({
  what,
  problem,
}: {
  readonly what: string;
  readonly problem: ReadProblem;
}): ReactNode => (
  <p className="waiting" role="alert">
    {what} could not be opened. {problemText(problem)}
  </p>
);

function useDocuments(): Documents {
  const documents = useContext(DocumentsContext);
  if (documents === null) throw new Error('no shoot is open here');
  return documents;
}

export const useShoot = (): Shoot => useDocuments().shoot;
export const useKit = (): Kit => useDocuments().kit;

/** Writes an edit of the open shoot; the label is what undo will call it. */
export function useEditShoot(): (label: string, edit: Edit<Shoot>) => void {
  const services = useServices();
  const { id } = useDocuments().shoot;
  return useCallback(
    (label, edit) => {
      void services.repository
        .edit({ kind: 'shoot', id, label, edit, stamp: stamp(services) })
        .then(sayRefusal);
    },
    [services, id],
  );
}

/** Writes an edit of the kit. */
export function useEditKit(): (label: string, edit: Edit<Kit>) => void {
  const services = useServices();
  const { kit } = useDocuments();
  return (label, edit) => {
    void services.repository
      .edit({ kind: 'kit', id: kit.id, label, edit, stamp: stamp(services) })
      .then(sayRefusal);
  };
}

type Steps = { readonly undo: () => void; readonly redo: () => void };

/** One step back or forward through this tab's own edits of shoot and kit. */
export function useSteps(): Steps {
  const services = useServices();
  const { shoot, kit } = useDocuments();
  const step = (way: 'undo' | 'redo'): void => {
    void services.repository[way]({
      documents: [
        { kind: 'shoot', id: shoot.id },
        { kind: 'kit', id: kit.id },
      ],
      stamp: stamp(services),
    }).then((done) => {
      if (done.ok)
        say(
          [
            `${way === 'undo' ? 'Undone' : 'Done again'}: ${done.value.label}`,
            ...done.value.leftAlone,
          ].join('. '),
        );
      else if (done.problem.kind === 'storage') say(done.problem.sentence);
      else say(way === 'undo' ? 'Nothing of this tab is left to undo' : 'Nothing to do again');
    });
  };
  return { undo: () => step('undo'), redo: () => step('redo') };
}

const stamp = (services: {
  readonly newId: () => string;
  readonly authorId: string;
  readonly nowMs: () => number;
}): { entryId: string; authorId: string; atMs: number } => ({
  entryId: services.newId(),
  authorId: services.authorId,
  atMs: services.nowMs(),
});

const sayRefusal = (done: Awaited<ReturnType<ShootRepository['edit']>>): void => {
  if (!done.ok) say(`Not saved. ${problemText(done.problem)}`);
};

const problemText = (problem: ReadProblem): string => {
  switch (problem.kind) {
    case 'missing':
      return 'It is not on this device; another tab may have removed it.';
    case 'refused':
      return problem.faults.map(describeFault).join('; ');
    case 'storage':
      return problem.sentence;
  }
};
