import type { ReactNode } from 'react';

import { AMBIENT_SPREAD_MIRED } from '../../../core/sky/ambient-colour.ts';
import { LOWEST_COLOURED_SUN_DEG } from '../../../core/sky/sky-colour.ts';
import { seenLights } from '../../../core/plan/seen-lights.ts';
import type { SetupView } from '../../../core/plan/setup-view.ts';
import { useKit } from '../../state/documents.tsx';
import { Folded } from '../../ui/Folded.tsx';
import { NumberField } from '../../ui/NumberField.tsx';
import { ROLE_NAMES } from '../../ui/recipe-text.ts';
import type { AskedProps } from './asked-props.ts';
import { ColourPairs } from './ColourPairs.tsx';
import { seenText } from './colour-text.ts';
import { Group } from './Group.tsx';
import { useSetupEdit } from './use-setup-edit.ts';

/** White balance, and how every light looks under it. */
export function WhiteBalance({ setupId, setup, view }: AskedProps): ReactNode {
  const put = useSetupEdit(setupId);
  return (
    <Group title="White balance and colour" id="white-balance">
      <NumberField
        label="White balance"
        field="white-balance-kelvin"
        unit="K"
        min={2000}
        max={15000}
        step={100}
        digits={0}
        value={setup.whiteBalanceKelvin}
        onCommit={(value) => value !== null && put('white balance', { whiteBalanceKelvin: value })}
      />
      <NumberField
        label="Tint, to magenta positive"
        field="white-balance-tint"
        min={-50}
        max={50}
        step={1}
        digits={0}
        value={setup.whiteBalanceTint}
        onCommit={(value) => value !== null && put('tint', { whiteBalanceTint: value })}
      />
      <NumberField
        label="Ambient on the face"
        field="ambient-kelvin"
        unit="K"
        optional
        min={1800}
        max={25000}
        step={100}
        digits={0}
        value={setup.ambientKelvin}
        onCommit={(ambientKelvin) => put('ambient colour', { ambientKelvin })}
      />
      {view === null ? null : (
        <>
          <Looks view={view} />
          <div className="wide">
            <Folded summary="Make the ambient bluer or warmer" open="colour-pairs">
              <ColourPairs setupId={setupId} view={view} />
            </Folded>
          </div>
        </>
      )}
    </Group>
  );
}

function Looks({ view }: { readonly view: SetupView }): ReactNode {
  const kit = useKit();
  const { sources, ambient, ambientKelvin, sky } = seenLights(view, kit);
  const low = view.light.sun.apparentAltitudeDeg < LOWEST_COLOURED_SUN_DEG;
  return (
    <div className="wide">
      <dl className="rows">
        {sources.map(({ lightId, role, seen }) => (
          <Look
            key={lightId}
            name={`${ROLE_NAMES[role]}, on skin`}
            figure={`look-${lightId}`}
            text={seenText(seen)}
          />
        ))}
        <Look name="Ambient on the face" figure="look-ambient" text={seenText(ambient)} />
        <Look
          name={view.light.skyInFrame?.patchIsFrame === true ? 'Sky in frame' : 'Sky in the patch'}
          figure="look-sky"
          text={seenText(sky)}
        />
      </dl>
      <p className="quiet">
        {view.setup.ambientKelvin === null ? (
          <>
            Ambient by the sky condition and the sun:{' '}
            <span data-figure="ambient-kelvin-now">{Math.round(ambientKelvin / 100) * 100} K</span>,
            ± {AMBIENT_SPREAD_MIRED} mired. Leave its field empty to keep it so.
          </>
        ) : (
          'Ambient as you stated it.'
        )}{' '}
        {low ? 'With the sun down the sky keeps the colours of its last half degree.' : ''}
      </p>
    </div>
  );
}

type LookProps = { readonly name: string; readonly figure: string; readonly text: string };

const Look = ({ name, figure, text }: LookProps): ReactNode => (
  <div>
    <dt>{name}</dt>
    <dd data-figure={figure}>{text}</dd>
  </div>
);
