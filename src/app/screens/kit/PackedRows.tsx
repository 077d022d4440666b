import type { ReactNode } from 'react';

import type { PackedItem } from '../../../core/plan/packed-items.ts';
import type { PackingList } from '../../../core/plan/packing-list.ts';
import { kilograms } from '../../ui/figure-text.ts';
import { SHELVES } from './shelves.ts';

/** The things of a packing list, shelf by shelf. */
export function PackedRows({ list }: { readonly list: PackingList }): ReactNode {
  return (
    <table className="figures">
      <thead>
        <tr>
          <th scope="col">Take</th>
          <th scope="col">How many</th>
          <th scope="col">Weight</th>
          <th scope="col">Packed</th>
        </tr>
      </thead>
      <tbody>
        {list.items.map((item) => {
          const key = [item.shelf, item.id, item.part].filter((one) => one !== null).join('-');
          return (
            <tr key={key}>
              <th scope="row">
                {nameText(item)} <Lack item={item} />
              </th>
              <td data-figure={`pack-${key}`}>{item.count}</td>
              <td>{item.massKg === null ? '–' : kilograms(item.count * item.massKg)}</td>
              <td className="tick" aria-label="box to tick" />
            </tr>
          );
        })}
      </tbody>
    </table>
  );
}

function nameText({ shelf, id, part, name }: PackedItem): string {
  const whole = name ?? `a ${SHELVES[shelf].one} that was called ${id}`;
  return part === null ? whole : `${part[0]?.toUpperCase() ?? ''}${part.slice(1)} of ${whole}`;
}

function Lack({ item }: { readonly item: PackedItem }): ReactNode {
  const { name, count, owned, part } = item;
  if (name === null) return <span className="fault">not in the kit</span>;
  if (owned !== null)
    return count > owned ? <span className="fault">more than you own: {owned}</span> : null;
  return count > 1 && part === null ? (
    <span className="quiet">how many you own is not in the kit</span>
  ) : null;
}
