import './compare.css';
import { useState, type ReactNode } from 'react';

import { inOrder } from '../../../../core/plan/order-key.ts';
import { formatDate } from '../../../../core/units/civil-time.ts';
import { useShoot } from '../../../state/documents.tsx';
import { CONDITION_NAMES } from '../../../ui/condition-names.ts';
import { Dialog } from '../../../ui/Dialog.tsx';
import { SelectField } from '../../../ui/SelectField.tsx';
import { COMPARED, sortedRows, type ComparedKey, type ComparisonRow } from './comparison-row.ts';
import { SideBySide } from './SideBySide.tsx';
import { useComparison } from './use-comparison.ts';

type Sorting = { readonly key: ComparedKey | 'spot'; readonly up: boolean };

/** Spots as rows, what matters as columns; any two beside each other. */
export function CompareSpots({ onClose }: { readonly onClose: () => void }): ReactNode {
  const shoot = useShoot();
  const [lights, setLights] = useState('own');
  const [sorting, setSorting] = useState<Sorting | null>(null);
  const [beside, setBeside] = useState<readonly string[]>([]);
  const rows = useComparison(lights);
  const shown = sorting === null ? rows : sortedRows(rows, sorting);
  const pair = beside.filter((id) => shoot.spots[id] !== undefined);
  const sort = (key: Sorting['key']): void =>
    setSorting({ key, up: sorting?.key === key ? !sorting.up : true });
  return (
    <Dialog title="Compare the spots" onClose={onClose}>
      <p className="quiet">
        {formatDate(shoot.date, 'en-GB')}, {CONDITION_NAMES[shoot.condition]}. The sky is the mean
        inside the window in which the lights hold it, ± its spread; dark to bright is what lies
        between its darkest and its brightest twentieth.
      </p>
      <SelectField
        label="With the lights of"
        field="compare-lights"
        value={lights}
        options={[
          { value: 'own', text: 'each spot’s own first setup' },
          ...inOrder(shoot.setups).map(([id, setup]) => ({
            value: id,
            text: `${setup.name}, carried to every spot`,
          })),
        ]}
        onChoose={setLights}
      />
      <div className="compare-table">
        <table data-figure="comparison">
          <thead>
            <tr>
              <Head
                title="Spot"
                sorted={sorting?.key === 'spot' ? sorting.up : null}
                onSort={() => sort('spot')}
              />
              {COMPARED.map(({ key, title }) => (
                <Head
                  key={key}
                  title={title}
                  sorted={sorting?.key === key ? sorting.up : null}
                  onSort={() => sort(key)}
                />
              ))}
              <th scope="col">Beside</th>
            </tr>
          </thead>
          <tbody>
            {shown.map((row) => (
              <Row
                key={row.spotId}
                row={row}
                isBeside={pair.includes(row.spotId)}
                onBeside={(on) =>
                  setBeside(
                    on ? [...pair.slice(-1), row.spotId] : pair.filter((id) => id !== row.spotId),
                  )
                }
              />
            ))}
          </tbody>
        </table>
      </div>
      {pair.length === 2 ? (
        <SideBySide spotIds={pair} rows={rows} />
      ) : (
        <p className="quiet" role="status">
          Mark two spots to open them beside each other.
        </p>
      )}
    </Dialog>
  );
}

type HeadProps = {
  readonly title: string;
  /** Null: the rows are not sorted by this. */
  readonly sorted: boolean | null;
  readonly onSort: () => void;
};

const Head = ({ title, sorted, onSort }: HeadProps): ReactNode => (
  <th scope="col" aria-sort={sorted === null ? 'none' : sorted ? 'ascending' : 'descending'}>
    <button type="button" data-sort={title} onClick={onSort}>
      {title}
      {sorted === null ? '' : sorted ? ' ↑' : ' ↓'}
    </button>
  </th>
);

type RowProps = {
  readonly row: ComparisonRow;
  readonly isBeside: boolean;
  readonly onBeside: (on: boolean) => void;
};

const Row = ({ row, isBeside, onBeside }: RowProps): ReactNode => (
  <tr data-compared={row.spotId}>
    <th scope="row">{row.name}</th>
    {COMPARED.map(({ key }) => (
      <td key={key} data-cell={key}>
        {row.cells[key].text}
      </td>
    ))}
    <td>
      <input
        type="checkbox"
        data-field={`beside-${row.spotId}`}
        aria-label={`Open ${row.name} beside another`}
        checked={isBeside}
        onChange={(event) => onBeside(event.currentTarget.checked)}
      />
    </td>
  </tr>
);
