import type { ReactNode } from 'react';

import { miredFromKelvin } from '../../../core/colour/mired.ts';
import type { SetupView } from '../../../core/plan/setup-view.ts';
import { sunAsLight, type SunAsLight, type SunRole } from '../../../core/plan/sun-as-light.ts';
import { AMBIENT_SPREAD_MIRED } from '../../../core/sky/ambient-colour.ts';
import { evText, signedTenths, spreadText } from '../../ui/figure-text.ts';

const ROLE_TEXTS: Readonly<Record<SunRole, string>> = {
  rim: 'from behind, a rim',
  side: 'from the side',
  'rival-key': 'from the front, a rival to your key',
  shaded: 'kept off by a panel or a wall',
  blocked: 'hidden by the skyline or by cloud',
  down: 'below the horizon',
};

const FACE_TEXTS: Readonly<Record<SunAsLight['onFace'], string>> = {
  nothing: '',
  'edge-only': 'It strikes hair and shoulder only.',
  'half-shadow': 'One half of the face lies in its shadow.',
  'nose-shadow': 'The nose throws its shadow on the face.',
  'eye-sockets': 'So high that the brows shade the eyes.',
};

/** The sun as one of the lights: from where, how strong on the edge it strikes, how warm. */
export function SunLine({ view }: { readonly view: SetupView }): ReactNode {
  const { light, setup, framing } = view;
  const sun = sunAsLight(light, setup, framing);
  const cameraEv = view.answer.ok ? view.answer.value.recipe.cameraEv : null;
  const side = sun.angleDeg < 0 ? 'left' : 'right';
  const whiteMired = miredFromKelvin(setup.whiteBalanceKelvin);
  const warmerMired = Math.round((miredFromKelvin(sun.kelvin) - whiteMired) / 5) * 5;
  const arrives = sun.edgeEv > -Infinity;
  return (
    <section className="sun-line" aria-labelledby="sun-as-light">
      <h2 id="sun-as-light">The sun</h2>
      <p>
        <strong data-figure="sun-role">{ROLE_TEXTS[sun.role]}</strong>
        {sun.role === 'down'
          ? ''
          : `, ${Math.abs(Math.round(sun.angleDeg))}° to the camera’s ${side}, ${sun.altitudeDeg.toFixed(0)}° up`}
      </p>
      {arrives ? (
        <>
          <p>
            On an edge that faces it <span data-figure="sun-edge-ev">{evText(sun.edgeEv)}</span>{' '}
            {spreadText(light.daylight.spreadStops)}
            {cameraEv === null ? '' : `, ${signedTenths(sun.edgeEv - cameraEv)} from mid-grey here`}
            {sun.shareOfMinutes < 0.98
              ? `; out in about ${Math.max(1, Math.round(sun.shareOfMinutes * 100))} of 100 minutes`
              : ''}
            . {FACE_TEXTS[sun.onFace]}
          </p>
          <p className="quiet">
            About {Math.round(sun.kelvin / 100) * 100} K,{' '}
            <span data-figure="sun-colour">
              {Math.abs(warmerMired)} mired {warmerMired < 0 ? 'bluer' : 'warmer'}
            </span>{' '}
            than your white balance, ± {AMBIENT_SPREAD_MIRED}; from published bands by altitude.
          </p>
        </>
      ) : null}
    </section>
  );
}
