import { useMemo, type ReactNode } from 'react';

import { packingList, type PackingList as Packing } from '../../../core/plan/packing-list.ts';
import { formatDate } from '../../../core/units/civil-time.ts';
import { useKit, useShoot } from '../../state/documents.tsx';
import { kilograms } from '../../ui/figure-text.ts';
import { PackedBatteries } from './PackedBatteries.tsx';
import { PackedRows } from './PackedRows.tsx';

/** What the open shoot takes along, from all its setups; fit to be printed. */
export function PackingList(): ReactNode {
  const shoot = useShoot();
  const kit = useKit();
  const list = useMemo(() => packingList(shoot, kit), [shoot, kit]);
  return (
    <div className="shelf packing" data-packing-list>
      <header>
        <h1>Packing list</h1>
        <p className="quiet">
          {shoot.title}, {formatDate(shoot.date, 'en-GB')}. Of each thing as many as are in use at
          once, worked out from the setups.{' '}
          <button type="button" className="no-print" onClick={() => window.print()}>
            Print
          </button>
        </p>
      </header>
      {list.items.length === 0 ? <p>This shoot has no setup yet.</p> : <PackedRows list={list} />}
      <PackedBatteries batteries={list.batteries} />
      <Ballast list={list} />
      <p>
        <strong data-figure="total-weight">{kilograms(list.totalKg)}</strong> to carry, batteries
        with it, ballast without.
        {list.notWeighed === 0
          ? ''
          : ` ${list.notWeighed} ${list.notWeighed === 1 ? 'piece has' : 'pieces have'} no weight in the kit.`}
      </p>
    </div>
  );
}

function Ballast({ list }: { readonly list: Packing }): ReactNode {
  const { ballast, windNotKnown, aboveLimit, withoutStand } = list;
  return (
    <section aria-label="Stands and ballast">
      <h2>Stands and ballast</h2>
      {ballast === null ? null : (
        <p data-figure="ballast">
          {Math.ceil(ballast.kg)} kg of ballast on the windward legs for gusts up to{' '}
          {ballast.gustMS} m/s, at ‘{ballast.setup}’: an estimate, not an approval. Bags may be
          filled on site.
        </p>
      )}
      {windNotKnown.length === 0 ? null : (
        <p data-figure="wind-not-known">
          No gust is stated for {windNotKnown.map(quoted).join(', ')}: no kilograms without a wind.
        </p>
      )}
      {aboveLimit.length === 0 ? null : (
        <p className="fault" data-figure="above-limit">
          At {aboveLimit.map(quoted).join(', ')} the gust is above a stand’s limit of yours: it
          stays down there.
        </p>
      )}
      {withoutStand === 0 ? null : (
        <p data-figure="without-stand">
          {withoutStand} {withoutStand === 1 ? 'head has' : 'heads have'} no stand named: held in
          the hand, or name one in the setup.
        </p>
      )}
    </section>
  );
}

const quoted = (name: string): string => `‘${name}’`;
