import { useMemo, type ReactNode } from 'react';

import type { HoldDay } from '../../../core/plan/hold-day.ts';
import { removeSpot } from '../../../core/plan/edits.ts';
import { setupsAt } from '../../../core/plan/setup-light.ts';
import type { Setup } from '../../../core/plan/setup-schema.ts';
import type { Spot } from '../../../core/plan/shoot.ts';
import { formatCoordinates } from '../../../core/place/format-coordinates.ts';
import { formatDate } from '../../../core/units/civil-time.ts';
import { useEditShoot, useShoot } from '../../state/documents.tsx';
import { say } from '../../state/view.ts';
import { Folded } from '../../ui/Folded.tsx';
import { Later } from '../../ui/Later.tsx';
import { FramingFields } from './FramingFields.tsx';
import { Photos, PlaceFields, SiteNotes, SunInPicture } from './lazy-sections.ts';
import { holdLines, sunLines } from './light-sentences.ts';
import { LightLines } from './LightLines.tsx';
import { SkyFigures } from './SkyFigures.tsx';
import { SkylineSection } from './skyline/SkylineSection.tsx';
import type { SunDay } from './sun-day.ts';
import { useSpotLight } from './use-spot-light.ts';
import type { SpotPlaces } from './use-spot-places.ts';
import { zoneText } from './zone-options.ts';

type SpotSheetProps = {
  readonly spotId: string;
  readonly spot: Spot;
  readonly setup: readonly [id: string, setup: Setup] | null;
  readonly sun: SunDay;
  readonly hold: HoldDay | null;
  readonly minuteMs: number;
  /** Whether the first figures of the screen stand. */
  readonly figuresStand: boolean;
  readonly places: SpotPlaces;
};

/** Everything known of one spot. */
export function SpotSheet(props: SpotSheetProps): ReactNode {
  const { spotId, spot, setup, sun, hold, minuteMs, figuresStand, places } = props;
  const shoot = useShoot();
  const { scene, light } = useSpotLight(shoot, spot, setup?.[1] ?? null, minuteMs);
  const lines = useMemo(
    () => [
      ...sunLines(sun, spot.zone, shoot.condition),
      ...(setup !== null && hold !== null
        ? holdLines(nameOf(setup[1]), hold.column, hold.windows, spot.zone)
        : []),
    ],
    [sun, spot.zone, shoot.condition, setup, hold],
  );
  return (
    <>
      <header>
        <h1 data-figure="spot-name">{spot.name}</h1>
        <p className="quiet">
          <span data-figure="coordinates">{formatCoordinates(spot)}</span> ·{' '}
          <span data-figure="elevation">{spot.elevationM} m above sea level</span> ·{' '}
          <span data-figure="zone">{zoneText(spot.zone, sun.day.startMs)}</span>
        </p>
      </header>
      <Folded
        summary="Place and name"
        open="place"
        byItself={places.findings[spotId] !== undefined}
      >
        <PlaceFields spotId={spotId} spot={spot} places={places} dateMs={sun.day.startMs} />
      </Folded>
      <FramingFields spotId={spotId} spot={spot} />
      <SkylineSection
        spotId={spotId}
        spot={spot}
        scene={scene}
        light={light}
        condition={shoot.condition}
      />
      <SkyFigures light={light} condition={shoot.condition} minuteMs={minuteMs} zone={spot.zone} />
      <LightLines
        title={`Light on ${formatDate(shoot.date, 'en-GB')}`}
        lines={lines}
        sunInFrame={sun.windows.sunInFrame.length > 0}
      >
        {setup === null ? (
          <p className="quiet" data-figure="no-setup">
            No setup stands here yet: with one, this says when its lights hold the sky.
          </p>
        ) : null}
      </LightLines>
      <Folded summary="Sun in the picture: on which days" open="sun-in-picture">
        <SunInPicture spotId={spotId} spot={spot} setup={setup} />
      </Folded>
      <Folded summary={photosText(spot)} open="photos">
        <Photos spotId={spotId} spot={spot} />
      </Folded>
      <Later when={figuresStand}>
        <SiteNotes spotId={spotId} spot={spot} date={shoot.date} />
      </Later>
      <RemoveSpot spotId={spotId} spot={spot} />
    </>
  );
}

const photosText = ({ photos, readings }: Spot): string => {
  const [photo, reading] = [Object.keys(photos).length, Object.keys(readings).length];
  if (photo + reading === 0) return 'Photos';
  return `Photos: ${photo}, readings: ${reading}`;
};

const nameOf = (setup: Setup): string =>
  setup.framing === null ? setup.name : `${setup.name}, in its own framing`;

function RemoveSpot({ spotId, spot }: { readonly spotId: string; readonly spot: Spot }): ReactNode {
  const shoot = useShoot();
  const edit = useEditShoot();
  const setups = setupsAt(shoot, spotId).length;
  const along = setups === 0 ? '' : ` with its ${setups === 1 ? 'setup' : `${setups} setups`}`;
  return (
    <button
      type="button"
      data-remove-spot
      onClick={() => {
        edit(`remove ${spot.name}`, removeSpot(spotId));
        say(`Removed ${spot.name}${along}. Undo brings it back`);
      }}
    >
      Remove {spot.name}
      {along}
    </button>
  );
}
