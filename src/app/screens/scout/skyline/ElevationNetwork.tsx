import type { ReactNode } from 'react';

import type { Spot } from '../../../../core/plan/shoot.ts';
import { elevationRequest } from '../../../state/elevation.ts';
import { useSavedSetting } from '../../../state/saved-setting.ts';
import { Switch } from '../../../ui/Switch.tsx';
import { TextField } from '../../../ui/TextField.tsx';
import { placeOf } from '../sun-day.ts';

type ElevationNetworkProps = {
  readonly spot: Spot;
  readonly disabled: boolean;
  readonly onAsk: (template: string, host: string) => void;
};

/** Elevation tiles of a server, once switched on: which, and what it learns. */
export function ElevationNetwork({ spot, disabled, onAsk }: ElevationNetworkProps): ReactNode {
  const [on, turn] = useSavedSetting<boolean>('elevation-network', false);
  const [address, setAddress] = useSavedSetting<string>('elevation-address', '');
  const place = placeOf(spot);
  const asked = address === null || address === '' ? null : elevationRequest(address, place);
  return (
    <div className="elevation-network">
      <Switch
        label="Ask the network for elevation"
        field="elevation-network"
        on={on === true}
        disabled={asked?.ok !== true && on !== true}
        onTurn={turn}
      />
      <TextField
        label="Address of the elevation tiles, with {z}, {x} and {y}"
        field="elevation-address"
        value={address ?? ''}
        faultOf={(text) => {
          const described = text.trim() === '' ? null : elevationRequest(text.trim(), place);
          return described === null || described.ok ? null : described.problem;
        }}
        onCommit={(text) => setAddress(text.trim())}
      />
      <p className="quiet" data-figure="elevation-privacy">
        {asked === null
          ? 'Heights as PNG tiles, their colours red × 256 + green + blue ÷ 256 − 32768 metres, from a server whose terms allow it. Off, nothing is asked of anyone.'
          : asked.ok
            ? asked.value.sentence
            : asked.problem}
      </p>
      {on === true && asked?.ok === true && address !== null ? (
        <button
          type="button"
          data-ask-elevation
          disabled={disabled}
          onClick={() => onAsk(address, asked.value.host)}
        >
          Ask {asked.value.host} for the terrain
        </button>
      ) : null}
    </div>
  );
}
