import type { ReactNode } from 'react';

import type { Kit } from '../../../core/plan/kit.ts';
import { inOrder } from '../../../core/plan/order-key.ts';
import { Switch } from '../../ui/Switch.tsx';
import { filterText } from '../../ui/recipe-text.ts';

type PinnedFiltersProps = {
  readonly kit: Kit;
  readonly ids: Readonly<Record<string, true>>;
  readonly onChange: (ids: Record<string, true>) => void;
};

/** Exactly these filters of the kit before the lens. */
export function PinnedFilters({ kit, ids, onChange }: PinnedFiltersProps): ReactNode {
  const gone = Object.keys(ids).filter((id) => kit.filters[id] === undefined);
  const turn = (id: string, on: boolean): void => {
    const others = Object.entries(ids).filter(([other]) => other !== id);
    onChange(Object.fromEntries(on ? [...others, [id, true as const]] : others));
  };
  return (
    <span className="pinned-filters">
      <span className="label">Filters, exactly these</span>
      {inOrder(kit.filters).map(([id, filter]) => (
        <Switch
          key={id}
          label={filterText(filter)}
          field={`filter-${id}`}
          on={ids[id] === true}
          onTurn={(on) => turn(id, on)}
        />
      ))}
      {gone.map((id) => (
        <Switch
          key={id}
          label={`‘${id}’, not in the kit`}
          field={`filter-${id}`}
          on
          onTurn={() => turn(id, false)}
        />
      ))}
    </span>
  );
}
