import { memo, useMemo, useState, type ReactNode } from 'react';

import { parseCoordinates } from '../../../core/place/coordinates-text.ts';
import { formatCoordinates } from '../../../core/place/format-coordinates.ts';
import { editSpot } from '../../../core/plan/edits.ts';
import type { Spot } from '../../../core/plan/shoot.ts';
import { useEditShoot } from '../../state/documents.tsx';
import { NumberField } from '../../ui/NumberField.tsx';
import { SelectField } from '../../ui/SelectField.tsx';
import { TextField } from '../../ui/TextField.tsx';
import { coordinatesFault } from './coordinates-fault.ts';
import { elevationFinding } from './place-findings.ts';
import type { SpotPlaces } from './use-spot-places.ts';
import { zoneOptions, zoneText } from './zone-options.ts';

type PlaceFieldsProps = {
  readonly spotId: string;
  readonly spot: Spot;
  readonly places: SpotPlaces;
  /** An instant of the shoot's date, for the clocks' offset. */
  readonly dateMs: number;
};

/** Name, coordinates, elevation and zone of a spot, with what is known of the place. */
export const PlaceFields = memo(function PlaceFields(props: PlaceFieldsProps): ReactNode {
  const { spotId, spot, places, dateMs } = props;
  const edit = useEditShoot();
  const put = (what: string, fields: Partial<Spot>): void =>
    edit(`${what} of ${spot.name}`, editSpot(spotId, fields));
  const options = useMemo(() => zoneOptions([spot.zone]), [spot.zone]);
  return (
    <>
      <TextField
        label="Name"
        field="spot-name"
        maxLength={120}
        value={spot.name}
        faultOf={(text) => (text.trim() === '' ? 'found nothing, expected a name' : null)}
        onCommit={(text) => edit(`rename ${spot.name}`, editSpot(spotId, { name: text.trim() }))}
      />
      <TextField
        label="Coordinates, any usual notation"
        field="coordinates"
        value={formatCoordinates(spot)}
        faultOf={coordinatesFault}
        onCommit={(text) => {
          const read = parseCoordinates(text);
          if (read.ok) places.move(spotId, read.value);
        }}
      />
      <div className="place-fields">
        <NumberField
          label="Above sea level"
          unit="m"
          field="elevation"
          value={spot.elevationM}
          min={-450}
          max={9000}
          step={1}
          digits={0}
          onCommit={(value) => value !== null && put('elevation', { elevationM: value })}
        />
        <SelectField
          label="Time zone"
          field="zone"
          value={spot.zone}
          options={options}
          onChoose={(zone) => put('zone', { zone })}
        />
      </div>
      <Findings
        spotId={spotId}
        spot={spot}
        places={places}
        dateMs={dateMs}
        onZone={(zone) => put('zone', { zone })}
        onElevation={(elevationM) => put('elevation', { elevationM })}
      />
    </>
  );
});

type FindingsProps = PlaceFieldsProps & {
  readonly onZone: (zone: string) => void;
  readonly onElevation: (elevationM: number) => void;
};

/** Where zone and elevation come from, and what else they may be. */
function Findings(props: FindingsProps): ReactNode {
  const { spotId, spot, places, dateMs, onZone, onElevation } = props;
  const [looking, setLooking] = useState(false);
  const finding = places.findings[spotId];
  if (finding === undefined)
    return (
      <button
        type="button"
        data-look-up
        disabled={looking}
        onClick={() => {
          setLooking(true);
          void places.lookUp(spotId, spot).finally(() => setLooking(false));
        }}
      >
        {looking ? 'Looking…' : 'Look up zone and elevation'}
      </button>
    );
  const { found } = finding;
  if (found === null)
    return (
      <p role="alert">
        The place names could not be read. Zone and elevation are as typed; open the app once with
        the network to have the names on this device.
      </p>
    );
  const { zone, alternatives, reason } = found.zone;
  const others = [...new Set([zone, ...alternatives])].filter((one) => one !== spot.zone);
  const { elevationM, origin } = elevationFinding(found);
  return (
    <div className="findings" data-figure="place-findings">
      <p className="quiet">{reason}</p>
      {alternatives.length === 0 && others.length === 0 ? null : (
        <p>
          Which clocks hold here? Now {zoneText(spot.zone, dateMs)}.{' '}
          {others.map((other) => (
            <button key={other} type="button" data-take-zone={other} onClick={() => onZone(other)}>
              Take {zoneText(other, dateMs)}
            </button>
          ))}
        </p>
      )}
      <p className="quiet">
        Elevation: {origin}.{' '}
        {elevationM === spot.elevationM ? null : (
          <button type="button" data-take-elevation onClick={() => onElevation(elevationM)}>
            Take {elevationM} m
          </button>
        )}
      </p>
    </div>
  );
}
