import { useState, type ReactNode } from 'react';

import type { Modifier, Stand } from '../../../core/plan/kit.ts';
import { inOrder } from '../../../core/plan/order-key.ts';
import {
  ballastAtMiddleKg,
  ballastOnWindwardLegKg,
  tippingGustMS,
  type Stand as StandInWind,
} from '../../../core/strobe/ballast.ts';
import { faceAreaM2 } from '../../../core/strobe/head.ts';
import { useKit } from '../../state/documents.tsx';
import { metres, tenths } from '../../ui/figure-text.ts';
import { NumberField } from '../../ui/NumberField.tsx';
import { SelectField } from '../../ui/SelectField.tsx';

const FIRST_GUST_M_S = 5;
const FIRST_HEIGHT_M = 2.3;

/** What a gust asks this stand for, with a modifier of the kit at a height. */
export function StandBallast({ stand }: { readonly stand: Stand }): ReactNode {
  const modifiers = inOrder(useKit().modifiers);
  const [gustMS, setGustMS] = useState(FIRST_GUST_M_S);
  const [heightM, setHeightM] = useState(Math.min(FIRST_HEIGHT_M, stand.maxHeightM));
  const [chosenId, setChosenId] = useState('');
  const [modifierId, modifier] =
    modifiers.find(([id]) => id === chosenId) ?? modifiers.toSorted(largerFirst)[0] ?? [];
  if (modifierId === undefined || modifier === undefined)
    return <p>Add a modifier first: it is the sail.</p>;
  return (
    <fieldset className="measure">
      <legend>In the wind</legend>
      <div className="fields">
        <NumberField
          label="Gust"
          field="ballast-gust"
          unit="m/s"
          min={1}
          max={40}
          step={1}
          value={gustMS}
          onCommit={(value) => value !== null && setGustMS(value)}
        />
        <SelectField
          label="Carries"
          field="ballast-modifier"
          value={modifierId}
          options={modifiers.map(([value, { name }]) => ({ value, text: name }))}
          onChoose={setChosenId}
        />
        <NumberField
          label="Its middle at"
          field="ballast-height"
          unit="m"
          min={0.2}
          max={12}
          step={0.1}
          value={heightM}
          onCommit={(value) => value !== null && setHeightM(value)}
        />
      </div>
      <Asks stand={stand} modifier={modifier} gustMS={gustMS} heightM={heightM} />
      <p className="quiet">
        An estimate, not an approval: wind from the worst side, feet that do not slip, firm level
        ground; the head’s own weight is left out. Bag clear of the ground and hung low; guy lines
        and stakes where they hold. Whoever stands below decides with you.
      </p>
    </fieldset>
  );
}

const largerFirst = (
  [, first]: readonly [string, Modifier],
  [, second]: readonly [string, Modifier],
): number => faceAreaM2(second) - faceAreaM2(first);

type AsksProps = {
  readonly stand: Stand;
  readonly modifier: Modifier;
  readonly gustMS: number;
  readonly heightM: number;
};

function Asks({ stand, modifier, gustMS, heightM }: AsksProps): ReactNode {
  const inWind: StandInWind = {
    sailAreaM2: faceAreaM2(modifier),
    sailHeightM: heightM,
    legSpreadM: stand.legSpreadM,
    legs: stand.legs,
    massKg: stand.massKg + modifier.massKg,
  };
  const gust = `gusts up to ${tenths(gustMS)} m/s`;
  const onLegKg = ballastOnWindwardLegKg(inWind, gustMS);
  return (
    <>
      <p>
        <strong data-figure="stand-ballast">
          {onLegKg === 0
            ? `Its own weight holds it in ${gust}`
            : `At least ${Math.ceil(onLegKg)} kg on the windward leg for ${gust}`}
        </strong>
        {onLegKg === 0
          ? '.'
          : `, half way out; or ${Math.ceil(ballastAtMiddleKg(inWind, gustMS))} kg at the middle.`}{' '}
        Without any it begins to tip at{' '}
        <span data-figure="tipping-gust">{tenths(tippingGustMS(inWind, 0))} m/s</span>.
      </p>
      {gustMS > stand.maxGustMS ? (
        <p className="fault" data-figure="above-gust-limit">
          Above your limit of {tenths(stand.maxGustMS)} m/s: it stays down; take a small modifier or
          hold the head in the hand.
        </p>
      ) : null}
      {heightM > stand.maxHeightM ? (
        <p className="fault" data-figure="above-height">
          It goes up to {metres(stand.maxHeightM)}; found {metres(heightM)}.
        </p>
      ) : null}
    </>
  );
}
