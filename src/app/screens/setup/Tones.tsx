import type { ReactNode } from 'react';

import type { SetupView } from '../../../core/plan/setup-view.ts';
import { CLIPPING_STOPS, toneMarks, type ToneMark } from '../../../core/plan/tone-marks.ts';
import { ToneScale, type ToneLabel } from '../../charts/ToneScale.tsx';
import { signedTenths } from '../../ui/figure-text.ts';

const MARK_TEXTS: Readonly<Record<ToneMark['name'], string>> = {
  card: 'Grey card at the face, key',
  patch: 'Sky, the patch',
  'sky-darkest': 'Sky, darkest twentieth',
  'sky-mean': 'Sky in frame',
  'sky-brightest': 'Sky, brightest twentieth',
  'fill-side': 'Face, fill side',
  rim: 'Rim',
  cross: 'Cross light',
  background: 'Background light',
  'unlit-face': 'Face with heads off',
  'unlit-face-sun-out': 'Face, heads off, sun out',
  'nearest-face': 'Nearest face',
  'farthest-face': 'Farthest face',
  sun: 'The sun',
  'sun-edge': 'Edge struck by the sun',
  ground: 'Ground',
  'lightest-skin': 'Lightest skin, key',
  'darkest-skin': 'Darkest skin, key',
  'white-shirt': 'White shirt, key',
};

/** Where sky, faces and ground fall at the recipe's settings. */
export function Tones({ view }: { readonly view: SetupView }): ReactNode {
  const marks = toneMarks(view);
  return (
    <section className="tones-column" aria-label="Where the tones fall">
      <h2>Where the tones fall</h2>
      {marks.length === 0 ? (
        <p className="gap">There is no recipe at this minute, so no tone has a place.</p>
      ) : (
        <>
          <p className="quiet">stops from a grey card under the key, at these settings</p>
          <ToneScale
            labels={marks.map((mark) => toneLabel(mark, view))}
            clipStops={CLIPPING_STOPS}
          />
        </>
      )}
    </section>
  );
}

export function toneLabel(mark: ToneMark, view: Pick<SetupView, 'setup'>): ToneLabel {
  const { name, of, stops, lightId } = mark;
  return {
    id: lightId === null ? name : `${name}-${lightId}`,
    text: MARK_TEXTS[name],
    stops,
    figure: stopsText(stops),
    of,
    strong: name === 'card' || name === (view.setup.holdUnder === 'frame' ? 'sky-mean' : 'patch'),
  };
}

function stopsText(stops: number): string {
  if (stops === Infinity) return 'clips';
  if (stops === -Infinity) return 'no light';
  return stops > CLIPPING_STOPS ? `${signedTenths(stops)}, clips` : signedTenths(stops);
}
