import type { ReactNode } from 'react';

import { inOrder } from '../../../core/plan/order-key.ts';
import type { Shoot } from '../../../core/plan/shoot.ts';

type SpotChooserProps = {
  readonly shoot: Shoot;
  readonly spotId: string | null;
  readonly onChoose: (spotId: string) => void;
};

/** The spots by name, also those outside the map's view. */
export const SpotChooser = ({ shoot, spotId, onChoose }: SpotChooserProps): ReactNode =>
  spotId === null ? null : (
    <label className="spot-chooser">
      <span className="quiet" aria-hidden="true">
        Spot
      </span>
      <select
        data-field="spot"
        aria-label="Spot"
        value={spotId}
        onChange={(event) => onChoose(event.currentTarget.value)}
      >
        {inOrder(shoot.spots).map(([id, { name }]) => (
          <option key={id} value={id}>
            {name}
          </option>
        ))}
      </select>
    </label>
  );
