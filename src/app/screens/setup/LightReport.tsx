import './light-report.css';
import type { ReactNode } from 'react';

import { bounceTint } from '../../../core/plan/bounce-tint.ts';
import { headToFeetStops } from '../../../core/plan/head-to-feet.ts';
import type { Setup } from '../../../core/plan/setup-schema.ts';
import type { SetupSource } from '../../../core/plan/setup-source.ts';
import { inWind } from '../../../core/plan/stand-in-wind.ts';
import { signedTenths, tenths } from '../../ui/figure-text.ts';
import {
  assumedBeamText,
  bounceText,
  placeText,
  softnessText,
  spreadOfFacesText,
  tintText,
  windText,
} from './light-words.ts';

type LightReportProps = { readonly setup: Setup; readonly source: SetupSource };

/** What one light is to the faces: how soft, how even from face to face and down to the feet, how it stands. */
export function LightReport({ setup, source }: LightReportProps): ReactNode {
  const { lightId, light, stand, faces, carrier, path, beamIsAssumed } = source;
  const tint = bounceTint(source);
  const bounce = bounceText(source);
  const feetStops = headToFeetStops(stand, setup);
  return (
    <dl className="light-report wide">
      <Line name="Softness" figure={`softness-${lightId}`} text={softnessText(source)} />
      {path?.kind === 'feathered' ? (
        <Line
          name="Turned off"
          figure={`feathered-${lightId}`}
          text={`costs ${tenths(path.lossStops)} at the middle face`}
        />
      ) : null}
      {bounce === null ? null : <Line name="Bounced" figure={`bounce-${lightId}`} text={bounce} />}
      {tint === null ? null : (
        <Line name="Tint" figure={`bounce-tint-${lightId}`} text={tintText(tint)} />
      )}
      {beamIsAssumed ? (
        <Line name="Beam" figure={`beam-${lightId}`} text={assumedBeamText} />
      ) : null}
      {setup.people > 1 ? (
        <div>
          <dt>Faces</dt>
          <dd>
            <span data-figure={`faces-${lightId}`}>{spreadOfFacesText(faces)}</span>
            <ol className="each-face">
              {faces.faces.map((face) => (
                <li key={`${face.row} ${face.inRow}`}>
                  {placeText(face)} <b>{signedTenths(face.stops)}</b>
                </li>
              ))}
            </ol>
          </dd>
        </div>
      ) : null}
      <Line
        name="Feet"
        figure={`feet-${lightId}`}
        text={`${signedTenths(feetStops)} against the middle face`}
      />
      <Line
        name="Stand"
        figure={`wind-${lightId}`}
        text={
          light.standId !== null && carrier === null
            ? 'this stand is not in the kit'
            : windText(inWind(source, setup.gustMS))
        }
      />
      {carrier !== null && carrier.maxHeightM < light.heightM ? (
        <Line
          name="Height"
          figure={`stand-height-${lightId}`}
          text={`the stand goes up to ${tenths(carrier.maxHeightM)} m, ${tenths(light.heightM)} m are asked`}
        />
      ) : null}
    </dl>
  );
}

type LineProps = { readonly name: string; readonly figure: string; readonly text: string };

const Line = ({ name, figure, text }: LineProps): ReactNode => (
  <div>
    <dt>{name}</dt>
    <dd data-figure={figure}>{text}</dd>
  </div>
);
