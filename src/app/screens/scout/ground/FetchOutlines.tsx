import type { ReactNode } from 'react';

import type { Spot } from '../../../../core/plan/shoot.ts';
import { footprintsSent } from '../../../state/outline-files.ts';
import { useSavedSetting } from '../../../state/saved-setting.ts';
import { NumberField } from '../../../ui/NumberField.tsx';
import { Switch } from '../../../ui/Switch.tsx';
import { TextField } from '../../../ui/TextField.tsx';
import { Fetching } from './Fetching.tsx';
import { footprintsAddressFault, footprintsHost } from './footprints-address.ts';

type FetchOutlinesProps = {
  readonly spot: Spot;
  /** Civil date of today at the spot. */
  readonly dated: string;
};

const HALF_SIDE_M = { min: 50, max: 2000, usual: 300 } as const;

/** Outlines round the spot from the open map database; off until it is switched on. */
export function FetchOutlines({ spot, dated }: FetchOutlinesProps): ReactNode {
  const [on, turn] = useSavedSetting<boolean>('footprints', false);
  const [saved, setAddress] = useSavedSetting<string>('footprints-address', '');
  const [radius, setRadius] = useSavedSetting<number>('footprints-radius', HALF_SIDE_M.usual);
  const address = saved ?? '';
  const asked = { address, place: spot, halfSideM: radius ?? HALF_SIDE_M.usual };
  const host = footprintsHost(address);
  return (
    <details>
      <summary data-open="footprints">Outlines from the open map database</summary>
      <Switch
        label="Ask the network for building outlines"
        field="footprints"
        on={on === true}
        disabled={host === null && on !== true}
        onTurn={turn}
      />
      <p className="quiet" data-figure="footprints-privacy">
        {host === null
          ? 'Give the address of a query interface of an open map database whose terms allow it. Off, nothing is asked of anyone.'
          : footprintsSent(asked)}
      </p>
      <TextField
        label="Address of the query interface"
        field="footprints-address"
        maxLength={400}
        value={address}
        faultOf={footprintsAddressFault}
        onCommit={(text) => setAddress(text.trim())}
      />
      <NumberField
        label="Each way from the spot"
        unit="m"
        field="footprints-radius"
        value={asked.halfSideM}
        min={HALF_SIDE_M.min}
        max={HALF_SIDE_M.max}
        step={50}
        digits={0}
        onCommit={(value) => value !== null && setRadius(value)}
      />
      {on === true && host !== null ? (
        <Fetching asked={asked} spotName={spot.name} host={host} dated={dated} />
      ) : null}
    </details>
  );
}
