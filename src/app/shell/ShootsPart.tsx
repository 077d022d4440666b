import { useCallback, useEffect, useState, type ReactNode } from 'react';

import { demoShoot } from '../../core/plan/demo-shoot.ts';
import { SHOOT_FORMAT, SHOOT_VERSION, type Shoot } from '../../core/plan/shoot.ts';
import { formatDate } from '../../core/units/civil-time.ts';
import { useShoot } from '../state/documents.tsx';
import { useServices } from '../state/services.ts';
import type { ShootSummary } from '../state/shoot-files.ts';
import { say } from '../state/view.ts';

/** The shoots on this device: open one, begin one, remove one. */
export function ShootsPart(props: { readonly onOpenShoot: (id: string) => void }): ReactNode {
  const { repository, newId } = useServices();
  const open = useShoot();
  const [shoots, setShoots] = useState<readonly ShootSummary[]>([]);
  const take = useCallback((listed: Awaited<ReturnType<typeof repository.listShoots>>): void => {
    if (listed.ok) setShoots(listed.value);
    else say(listed.problem.sentence);
  }, []);
  useEffect(
    function listAtFirst() {
      void repository.listShoots().then(take);
    },
    [repository, take],
  );

  const begin = async (shoot: Shoot): Promise<void> => {
    const made = await repository.create('shoot', shoot);
    if (made.ok) props.onOpenShoot(shoot.id);
    else say(made.problem.kind === 'storage' ? made.problem.sentence : 'It could not be begun.');
    take(await repository.listShoots());
  };

  const remove = async (shoot: ShootSummary): Promise<void> => {
    const removed = await repository.remove('shoot', shoot.id);
    if (!removed.ok) return say('It was not there any more.');
    say(`Removed ${shoot.title}.`);
    return take(await repository.listShoots());
  };

  return (
    <section aria-label="Shoots on this device">
      <h3>Shoots on this device</h3>
      <ul className="shoot-list">
        {shoots
          .map((listed) => (listed.id === open.id ? { ...listed, ...named(open) } : listed))
          .map((shoot) => (
            <li key={shoot.id}>
              <span>
                {shoot.title} <span className="quiet">{formatDate(shoot.date, 'en-GB')}</span>
              </span>
              {shoot.id === open.id ? (
                <strong className="quiet">open</strong>
              ) : (
                <>
                  <button type="button" onClick={() => props.onOpenShoot(shoot.id)}>
                    Open
                  </button>
                  <RemoveButton shoot={shoot} onRemove={() => void remove(shoot)} />
                </>
              )}
            </li>
          ))}
      </ul>
      <div>
        <button type="button" onClick={() => void begin({ ...emptyShoot(open), id: newId() })}>
          Begin an empty shoot
        </button>{' '}
        <button type="button" onClick={() => void begin({ ...demoShoot(), id: newId() })}>
          Add the demo shoot
        </button>
      </div>
    </section>
  );
}

const named = ({ title, date }: Shoot): Pick<ShootSummary, 'title' | 'date'> => ({ title, date });

function RemoveButton(props: {
  readonly shoot: ShootSummary;
  readonly onRemove: () => void;
}): ReactNode {
  const [sure, setSure] = useState(false);
  return sure ? (
    <button type="button" className="first" onClick={props.onRemove}>
      Remove {props.shoot.title} for good
    </button>
  ) : (
    <button type="button" onClick={() => setSure(true)}>
      Remove…
    </button>
  );
}

const emptyShoot = (like: Shoot): Omit<Shoot, 'id'> => ({
  format: SHOOT_FORMAT,
  version: SHOOT_VERSION,
  title: 'New shoot',
  date: like.date,
  condition: like.condition,
  spots: {},
  obstacles: {},
  outlineSets: {},
  setups: {},
});
