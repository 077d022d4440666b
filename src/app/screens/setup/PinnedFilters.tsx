import type { ReactNode } from 'react';

import { strongestStops } from '../../../core/colour/filter-stack.ts';
import type { Filter, Kit } from '../../../core/plan/kit.ts';
import { inOrder } from '../../../core/plan/order-key.ts';
import { Switch } from '../../ui/Switch.tsx';
import { tenths } from '../../ui/figure-text.ts';
import { NumberField } from '../../ui/NumberField.tsx';
import { filterText } from '../../ui/recipe-text.ts';

type PinnedFiltersProps = {
  readonly kit: Kit;
  readonly ids: Readonly<Record<string, true>>;
  /** Where a graduated one's middle lies, fraction of the picture's height above its centre. */
  readonly graduationFraction: number;
  readonly onChange: (ids: Record<string, true>) => void;
  readonly onGraduation: (fraction: number) => void;
};

/** A variable one is turned by the recipe: what it can do, not what it is set to. */
const chosenText = (filter: Filter): string =>
  filter.kind === 'variable-nd'
    ? `${filter.name}, ${tenths(filter.stops)} to ${tenths(strongestStops(filter))} stops`
    : filterText(filter);

/** Exactly these filters of the kit before the lens. */
export function PinnedFilters(props: PinnedFiltersProps): ReactNode {
  const { kit, ids, graduationFraction, onChange, onGraduation } = props;
  const isGraduated = Object.keys(ids).some((id) => kit.filters[id]?.kind === 'graduated-nd');
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
          label={chosenText(filter)}
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
      {isGraduated ? (
        <NumberField
          label="Graduated filter’s middle, above the picture’s centre"
          field="graduation"
          unit="% of height"
          min={-50}
          max={50}
          step={1}
          digits={0}
          value={graduationFraction * 100}
          onCommit={(value) => value !== null && onGraduation(value / 100)}
        />
      ) : null}
    </span>
  );
}
