import type { ReactNode } from 'react';

import { inOrder } from '../../../core/plan/order-key.ts';
import type { BounceOfLight } from '../../../core/plan/setup-schema.ts';
import { NumberField } from '../../ui/NumberField.tsx';
import { SelectField } from '../../ui/SelectField.tsx';
import { Switch } from '../../ui/Switch.tsx';
import { TextField } from '../../ui/TextField.tsx';
import type { KnownLightProps } from './light-props.ts';
import { useLightEdit } from './use-setup-edit.ts';

/** A wall in white paint a step away, square on, common practice. */
const FIRST_BOUNCE: BounceOfLight = {
  reflectance: 0.8,
  colour: '',
  headToSurfaceM: 1,
  incidenceDeg: 20,
  exitDeg: 20,
  panelSideM: null,
};

const NUMBERS = [
  { key: 'headToSurfaceM', id: 'bounce-head', label: 'Head to surface', unit: 'm', min: 0.1, max: 20, step: 0.1 },
  { key: 'incidenceDeg', id: 'bounce-incidence', label: 'Beam off the surface’s normal', unit: '°', min: 0, max: 80, step: 5 },
  { key: 'exitDeg', id: 'bounce-exit', label: 'Subject off the normal, other side', unit: '°', min: 0, max: 80, step: 5 },
] as const; // prettier-ignore

/** Aimed at the subject, or off a surface that then is the source: its distance, angle and height are those of the lit patch. */
export function LightBounce(props: KnownLightProps): ReactNode {
  const { setupId, lightId, light, spot } = props;
  const put = useLightEdit(setupId, lightId);
  const { bounce } = light;
  const change = (label: string, fields: Partial<BounceOfLight>): void => {
    if (bounce !== null) put(label, { bounce: { ...bounce, ...fields } });
  };
  return (
    <>
      <Switch
        label="Bounced off a surface"
        field={`bounced-${lightId}`}
        on={bounce !== null}
        onTurn={(on) => put('bounce', { bounce: on ? FIRST_BOUNCE : null })}
      />
      {bounce === null ? null : (
        <>
          <SurfaceOfSpot spot={spot} lightId={lightId} onChoose={change} />
          <NumberField
            label="It reflects"
            field={`bounce-reflectance-${lightId}`}
            value={100 * bounce.reflectance}
            unit="%"
            min={1}
            max={95}
            step={1}
            digits={1}
            onCommit={(value) =>
              value !== null && change('reflectance', { reflectance: value / 100 })
            }
          />
          <TextField
            label="Its colour, six hex digits"
            field={`bounce-colour-${lightId}`}
            value={bounce.colour}
            maxLength={7}
            faultOf={colourFault}
            onCommit={(text) => change('surface colour', { colour: hexOf(text) })}
          />
          {NUMBERS.map(({ key, id, label, unit, min, max, step }) => (
            <NumberField
              key={key}
              label={label}
              field={`${id}-${lightId}`}
              value={bounce[key]}
              unit={unit}
              min={min}
              max={max}
              step={step}
              digits={2}
              onCommit={(value) => value !== null && change(label.toLowerCase(), { [key]: value })}
            />
          ))}
          <NumberField
            label="Side of the panel, none for a wall"
            field={`bounce-panel-${lightId}`}
            value={bounce.panelSideM}
            unit="m"
            min={0.1}
            max={20}
            step={0.1}
            digits={2}
            optional
            onCommit={(panelSideM) => change('panel', { panelSideM })}
          />
        </>
      )}
    </>
  );
}

const hexOf = (text: string): string => text.trim().replace(/^#/, '').toLowerCase();

const colourFault = (text: string): string | null =>
  /^([0-9a-f]{6})?$/.test(hexOf(text))
    ? null
    : `found ‘${text}’, expected six digits of 0–9 and a–f such as c8b49a, or nothing for a neutral surface`;

type SurfaceOfSpotProps = {
  readonly spot: KnownLightProps['spot'];
  readonly lightId: string;
  readonly onChoose: (label: string, fields: Partial<BounceOfLight>) => void;
};

const NOT_CHOSEN = '';
/** What a light can be bounced from reflects at least this. */
const LEAST_REFLECTANCE = 0.01;

/** What was scouted at the spot; choosing one copies what it reflects. */
function SurfaceOfSpot({ spot, lightId, onChoose }: SurfaceOfSpotProps): ReactNode {
  const surfaces = inOrder(spot.surfaces);
  if (surfaces.length === 0)
    return (
      <p className="quiet wide">The spot lists no surfaces yet: they are noted under Scout.</p>
    );
  return (
    <SelectField
      label="As scouted"
      field={`bounce-surface-${lightId}`}
      value={NOT_CHOSEN}
      options={[
        { value: NOT_CHOSEN, text: 'take over a surface …' },
        ...surfaces.map(([value, { name, reflectance }]) => ({
          value,
          text: `${name}, ${Math.round(100 * reflectance)} %`,
        })),
      ]}
      onChoose={(id) => {
        const surface = spot.surfaces[id];
        if (surface !== undefined)
          onChoose(`bounce off ${surface.name}`, {
            reflectance: Math.max(LEAST_REFLECTANCE, surface.reflectance),
          });
      }}
    />
  );
}
