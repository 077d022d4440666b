import type { ReactNode } from 'react';

import { editKitItem } from '../../../core/plan/edits.ts';
import type { Modifier } from '../../../core/plan/kit.ts';
import { discDiameterM, faceAreaM2 } from '../../../core/strobe/head.ts';
import { useEditKit, useKit } from '../../state/documents.tsx';
import { metres } from '../../ui/figure-text.ts';
import { NumberField } from '../../ui/NumberField.tsx';
import { acrossText, BEAM_SHOWN_AT_M } from './beam-text.ts';
import { ModifierSettings } from './ModifierSettings.tsx';
import { Switch } from '../../ui/Switch.tsx';

const PARTS = [
  { field: 'diffuserStops', label: 'Front diffuser costs', max: 4 },
  { field: 'baffleStops', label: 'Inner baffle costs', max: 4 },
  { field: 'gridStops', label: 'Grid costs', max: 6 },
] as const;

const BEAMS = [
  { field: 'beamDeg', name: 'beam', label: 'Lights evenly across' },
  { field: 'gridBeamDeg', name: 'grid-beam', label: 'With its grid on, across' },
] as const;

export function ModifierForm({ id }: { readonly id: string }): ReactNode {
  const modifier = useKit().modifiers[id];
  const edit = useEditKit();
  if (modifier === undefined) return null;
  const set = (fields: Partial<Modifier>): void =>
    edit(`change ${modifier.name}`, editKitItem('modifiers', id, fields));
  return (
    <>
      <div className="fields">
        <NumberField
          label="Loss, all parts off"
          field="loss"
          unit="stops"
          min={-4}
          max={8}
          step={0.1}
          value={modifier.lossStops}
          note="negative where it gains"
          onCommit={(lossStops) => lossStops !== null && set({ lossStops })}
        />
        <NumberField
          label="That loss is known to ±"
          field="loss-spread"
          unit="stops"
          min={0}
          max={3}
          step={0.1}
          value={modifier.lossSpreadStops}
          onCommit={(lossSpreadStops) => lossSpreadStops !== null && set({ lossSpreadStops })}
        />
        <NumberField
          label="Face, width"
          field="width"
          unit="m"
          min={0.02}
          max={5}
          step={0.05}
          value={modifier.widthM}
          onCommit={(widthM) => widthM !== null && set({ widthM })}
        />
        <NumberField
          label="Face, height"
          field="height"
          unit="m"
          min={0.02}
          max={5}
          step={0.05}
          value={modifier.heightM}
          onCommit={(heightM) => heightM !== null && set({ heightM })}
        />
        <Switch
          label="Round"
          field="round"
          on={modifier.round}
          onTurn={(round) => set({ round })}
        />
        {PARTS.map(({ field, label, max }) => (
          <NumberField
            key={field}
            label={label}
            field={field}
            unit="stops"
            optional
            min={0}
            max={max}
            step={0.1}
            value={modifier[field]}
            note={modifier[field] === null ? 'empty: it has none' : undefined}
            onCommit={(stops) => set({ [field]: stops })}
          />
        ))}
        {BEAMS.map(({ field, name, label }) => (
          <NumberField
            key={field}
            label={label}
            field={name}
            unit="°"
            optional
            min={2}
            max={180}
            step={5}
            value={modifier[field]}
            note={modifier[field] === null ? 'empty: not known' : undefined}
            onCommit={(beamDeg) => set({ [field]: beamDeg })}
          />
        ))}
        <NumberField
          label="Weighs"
          field="modifier-mass"
          unit="kg"
          min={0}
          max={50}
          step={0.1}
          digits={2}
          value={modifier.massKg}
          note={modifier.massKg === 0 ? '0: not stated' : undefined}
          onCommit={(massKg) => massKg !== null && set({ massKg })}
        />
        <p className="quiet">
          Counts as a disc of{' '}
          <span data-figure="disc-diameter">{metres(discDiameterM(faceAreaM2(modifier)))}</span>{' '}
          across: closer than about five times that the inverse square law does not hold, and the
          disc formula is used. Lights evenly{' '}
          <span data-figure="beam-across">{acrossText(modifier.beamDeg)}</span> at {BEAM_SHOWN_AT_M}{' '}
          m, with its grid{' '}
          <span data-figure="grid-beam-across">{acrossText(modifier.gridBeamDeg)}</span>.
        </p>
      </div>
      <ModifierSettings modifierId={id} modifier={modifier} />
    </>
  );
}
