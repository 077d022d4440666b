import type { ReactNode } from 'react';

import { formatAperture, formatMeterAperture } from '../../../core/exposure/aperture-scale.ts';
import { formatIso } from '../../../core/exposure/iso-scale.ts';
import { formatShutter } from '../../../core/exposure/shutter-scale.ts';
import type { setupView, SetupView } from '../../../core/plan/setup-view.ts';
import type { Setup } from '../../../core/plan/setup-schema.ts';
import type { Spot } from '../../../core/plan/shoot.ts';
import { bearingText, metres, spreadText, tenths } from '../../ui/figure-text.ts';
import { filterText } from '../../ui/recipe-text.ts';
import { powerText } from '../../ui/power-text.ts';

type SetupRowProps = {
  readonly id: string;
  readonly setup: Setup;
  readonly spot: Spot | undefined;
  readonly view: ReturnType<typeof setupView> | null;
};

export function SetupRow({ id, setup, spot, view }: SetupRowProps): ReactNode {
  return (
    <li data-sheet-setup={id}>
      <p className="when">
        <strong>{setup.startClock}</strong>
        <span className="quiet">{setup.durationMin} min</span>
      </p>
      <div>
        <h3>{setup.name}</h3>
        {spot === undefined ? null : (
          <p className="quiet">
            {spot.name} · {spot.parkingNote === '' ? '' : `${spot.parkingNote} · `}
            {spot.walkInMin} min walk-in · permission {spot.permission}
            {spot.permissionNote === '' ? '' : `, ${spot.permissionNote}`}
          </p>
        )}
        {view?.ok === true ? (
          <Settings view={view.value} />
        ) : (
          <p className="fault">No settings: open the setup, it says why.</p>
        )}
        {spot === undefined || spot.hazardsNote === '' ? null : (
          <p>
            <strong>Hazards</strong> {spot.hazardsNote}
          </p>
        )}
      </div>
    </li>
  );
}

function Settings({ view }: { readonly view: SetupView }): ReactNode {
  const { framing, setup, answer } = view;
  const heading = `Faces ${bearingText(framing.bearingDeg)}, ${framing.focalLengthMm} mm, tilt ${tenths(framing.tiltDeg)}°, camera ${metres(framing.cameraDistanceM)} away and ${metres(framing.cameraHeightM)} high; held ${tenths(setup.holdStops)} under the ${setup.holdUnder === 'incident' ? 'incident reading' : setup.holdUnder}.`;
  if (!answer.ok)
    return (
      <>
        <p>{heading}</p>
        <p className="fault">
          Does not work at {setup.startClock}, by {tenths(answer.problem.shortByStops)} stops: open
          the setup for its fixes.
        </p>
      </>
    );
  const { recipe, filters, brightEndInHandStops } = answer.value;
  const step = 'third';
  return (
    <>
      <p>{heading}</p>
      <p>
        <strong>
          {formatShutter(recipe.shutterS, step)} {formatAperture(recipe.fNumber, step)}{' '}
          {formatIso(recipe.iso)}
        </strong>{' '}
        {filters.length === 0 ? 'no filter' : filters.map(filterText).join(' and ')}
        {' · '}
        {tenths(recipe.inHandStops)} in hand, {tenths(brightEndInHandStops)} at the bright end (
        {spreadText(view.referenceSpreadStops)})
      </p>
      <ul>
        {view.sources.map(({ lightId, light, head, modifier }, place) => {
          const lit = recipe.lights[place];
          if (lit === undefined) return null;
          const power = powerText(lit.powerStops, head);
          return (
            <li key={lightId}>
              {light.role}: {light.headCount > 1 ? `${light.headCount} × ` : ''}
              {head.name}, {modifier.name}, {metres(light.distanceM)}, {metres(light.heightM)} high:{' '}
              <strong>{power.dial}</strong> ({power.below}); meter, this light alone, flat to the
              light at the middle face, {formatIso(recipe.iso)}, no lens filter:{' '}
              <strong>{formatMeterAperture(lit.flashMeterFNumber)}</strong>
            </li>
          );
        })}
      </ul>
    </>
  );
}
