import './sun-in-picture.css';
import { memo, useMemo, useState, type ReactNode } from 'react';

import { editShoot } from '../../../../core/plan/edits.ts';
import type { LitAlignment } from '../../../../core/plan/lit-alignments.ts';
import type { SetupScene } from '../../../../core/plan/setup-light.ts';
import { setupQuestion } from '../../../../core/plan/setup-lights.ts';
import type { Setup } from '../../../../core/plan/setup-schema.ts';
import type { Spot } from '../../../../core/plan/shoot.ts';
import { projection, type PicturePoint } from '../../../../core/sky/framing.ts';
import {
  ALIGNMENT_DAYS,
  ALIGNMENT_TOLERANCE_DEG,
  isAlignmentDate,
  type SkyBody,
} from '../../../../core/spot/alignment-question.ts';
import { clockTime, formatDate } from '../../../../core/units/civil-time.ts';
import { useEditShoot, useKit, useShoot } from '../../../state/documents.tsx';
import { look, say } from '../../../state/view.ts';
import { NumberField } from '../../../ui/NumberField.tsx';
import { SelectField } from '../../../ui/SelectField.tsx';
import { TextField } from '../../../ui/TextField.tsx';
import { gapText } from '../../../ui/verdict-text.ts';
import { alignmentScene, framingText } from './alignment-scene.ts';
import { directionText, pointText } from './alignment-text.ts';
import { AlignmentResults } from './AlignmentResults.tsx';
import { roundedPoint } from './picture-point.ts';
import { PicturePad } from './PicturePad.tsx';
import { useAlignment } from './use-alignment.ts';

type SunInPictureProps = {
  readonly spotId: string;
  readonly spot: Spot;
  readonly setup: readonly [id: string, setup: Setup] | null;
};

/** On which days sun or moon stands at a point of the picture, and what the light is then. */
export const SunInPicture = memo(function SunInPicture(props: SunInPictureProps): ReactNode {
  const { spotId, spot } = props;
  const setup = props.setup?.[1] ?? null;
  const shoot = useShoot();
  const kit = useKit();
  const edit = useEditShoot();
  const [body, setBody] = useState<SkyBody>('sun');
  const [wanted, setWanted] = useState<PicturePoint>({ xFraction: 0, yFraction: 0 });
  const [toleranceDeg, setToleranceDeg] = useState<number>(ALIGNMENT_TOLERANCE_DEG.usual);
  const [chosenDate, setChosenDate] = useState<string | null>(null);
  const fromDate = chosenDate ?? shoot.date;

  const asked = JSON.stringify(alignmentScene(shoot, spot, setup));
  const scene = useMemo(() => JSON.parse(asked) as SetupScene, [asked]);
  const question = setup === null ? null : setupQuestion(setup, spot, kit);
  const { search, find, cancel } = useAlignment({
    scene,
    question: question?.ok === true ? question.value : null,
    body,
    fromDate,
    days: ALIGNMENT_DAYS,
    wanted,
    toleranceDeg,
  });

  const direction = projection(scene.framing).toDirection(wanted);
  const put = (point: Partial<PicturePoint>): void =>
    setWanted(roundedPoint({ ...wanted, ...point }));
  const use = ({ date, best }: LitAlignment): void => {
    edit('date of the shoot', editShoot({ date }));
    look({ spotId, minuteMs: best.instantMs });
    say(
      `The shoot is on ${formatDate(date, 'en-GB')} now, looked at ${clockTime(best.instantMs, spot.zone)}. Undo brings the date back`,
    );
  };

  return (
    <section className="sun-in-picture" aria-label="Sun in the picture">
      <p className="quiet">
        {framingText(setup)} Set the point where the {body} is to stand.
      </p>
      <PicturePad
        framing={scene.framing}
        skyline={scene.skyline}
        point={wanted}
        toleranceDeg={toleranceDeg}
        label={`Where the ${body} is to stand`}
        valueText={`${pointText(wanted)}; ${directionText(direction)}`}
        onPoint={setWanted}
      />
      <p data-figure="alignment-asked">
        The {body} within {toleranceDeg}° of {directionText(direction)}, {ALIGNMENT_DAYS} days from{' '}
        {formatDate(fromDate, 'en-GB')}.
      </p>
      <div className="fields">
        <SelectField
          label="Body"
          field="alignment-body"
          value={body}
          options={[
            { value: 'sun', text: 'sun' },
            { value: 'moon', text: 'moon' },
          ]}
          onChoose={setBody}
        />
        <NumberField
          label="Right of the centre"
          unit="% of width"
          field="alignment-across"
          value={100 * wanted.xFraction}
          min={-50}
          max={50}
          step={1}
          digits={1}
          onCommit={(value) => value !== null && put({ xFraction: value / 100 })}
        />
        <NumberField
          label="Above the centre"
          unit="% of height"
          field="alignment-up"
          value={100 * wanted.yFraction}
          min={-50}
          max={50}
          step={1}
          digits={1}
          onCommit={(value) => value !== null && put({ yFraction: value / 100 })}
        />
        <NumberField
          label="Tolerance"
          unit="°"
          field="alignment-tolerance"
          value={toleranceDeg}
          min={ALIGNMENT_TOLERANCE_DEG.min}
          max={ALIGNMENT_TOLERANCE_DEG.max}
          step={0.1}
          digits={2}
          onCommit={(value) => value !== null && setToleranceDeg(value)}
        />
        <TextField
          label="From"
          field="alignment-from"
          maxLength={10}
          value={fromDate}
          faultOf={(text) =>
            isAlignmentDate(text)
              ? null
              : `found ‘${text}’, expected a date of 1950 to 2049, as 2027-05-14`
          }
          onCommit={setChosenDate}
        />
      </div>
      {question?.ok === false ? (
        <p className="quiet" data-note="alignment-gap">
          No word on the lights: {gapText(question.problem)}.
        </p>
      ) : null}
      <button
        type="button"
        className="first"
        data-find-days
        disabled={search.kind === 'running'}
        onClick={() => {
          setChosenDate(fromDate);
          find();
        }}
      >
        Find the days
      </button>
      <AlignmentResults
        search={search}
        body={body}
        wanted={wanted}
        altitudeDeg={direction.altitudeDeg}
        shoot={shoot}
        spot={spot}
        onCancel={cancel}
        onUse={use}
      />
    </section>
  );
});
