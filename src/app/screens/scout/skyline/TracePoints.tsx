import { memo, type ReactNode } from 'react';

import { editSpot } from '../../../../core/plan/edits.ts';
import { addSkylinePoint, removeSkylinePoint } from '../../../../core/plan/skyline-edits.ts';
import type { Spot } from '../../../../core/plan/shoot.ts';
import { wrapDeg360 } from '../../../../core/units/angle.ts';
import { isCivilDate } from '../../../../core/units/civil-time.ts';
import { useEditShoot } from '../../../state/documents.tsx';
import { useServices } from '../../../state/services.ts';
import { NumberField } from '../../../ui/NumberField.tsx';
import { TextField } from '../../../ui/TextField.tsx';
import { nextSkylinePoint, skylineRows } from './skyline-points.ts';

type TracePointsProps = { readonly spotId: string; readonly spot: Spot };

/** The trace as points of azimuth and altitude. */
export const TracePoints = memo(function TracePoints({
  spotId,
  spot,
}: TracePointsProps): ReactNode {
  const edit = useEditShoot();
  const { newId } = useServices();
  const label = `skyline of ${spot.name}`;
  const rows = skylineRows(spot);
  return (
    <>
      <p className="quiet">
        Straight between the points, closed through north. Azimuth from true north, altitude as seen
        from the camera.
      </p>
      <ul className="skyline-points">
        {rows.map(([pointId, point]) => (
          <li key={pointId} data-skyline-point={pointId}>
            <NumberField
              label="Azimuth"
              unit="°"
              field="skyline-azimuth"
              value={point.azimuthDeg}
              min={0}
              max={360}
              step={1}
              digits={1}
              onCommit={(value) =>
                value !== null &&
                edit(
                  label,
                  addSkylinePoint(spotId, pointId, { ...point, azimuthDeg: wrapDeg360(value) }),
                )
              }
            />
            <NumberField
              label="Altitude"
              unit="°"
              field="skyline-altitude"
              value={point.altitudeDeg}
              min={-10}
              max={89}
              step={0.5}
              digits={1}
              onCommit={(value) =>
                value !== null &&
                edit(label, addSkylinePoint(spotId, pointId, { ...point, altitudeDeg: value }))
              }
            />
            <button
              type="button"
              aria-label={`Remove the point at ${point.azimuthDeg}°`}
              data-remove-point={pointId}
              onClick={() => edit(label, removeSkylinePoint(spotId, pointId))}
            >
              Remove
            </button>
          </li>
        ))}
      </ul>
      <button
        type="button"
        data-add-point
        onClick={() => edit(label, addSkylinePoint(spotId, newId(), nextSkylinePoint(spot)))}
      >
        Add a point
      </button>
      <TextField
        label="Where the trace comes from"
        field="skyline-origin"
        value={spot.skylineOrigin}
        onCommit={(skylineOrigin) => edit(label, editSpot(spotId, { skylineOrigin }))}
      />
      <TextField
        label="Seen on"
        field="skyline-dated"
        maxLength={10}
        value={spot.skylineDated}
        faultOf={(text) =>
          text === '' || isCivilDate(text)
            ? null
            : `found ‘${text}’, expected a date that exists, as 2027-05-14`
        }
        onCommit={(skylineDated) => edit(label, editSpot(spotId, { skylineDated }))}
      />
    </>
  );
});
