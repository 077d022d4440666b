import type { ReactNode } from 'react';

import type { LitAlignment } from '../../../../core/plan/lit-alignments.ts';
import type { Shoot, Spot } from '../../../../core/plan/shoot.ts';
import type { PicturePoint } from '../../../../core/sky/framing.ts';
import type { SkyBody } from '../../../../core/spot/alignment-question.ts';
import { CONDITION_NAMES } from '../../../ui/condition-names.ts';
import { AlignmentList } from './AlignmentList.tsx';
import { skylineOrigins } from './alignment-scene.ts';
import { countText, noDateText } from './alignment-text.ts';
import type { AlignmentSearch } from './use-alignment.ts';

type AlignmentResultsProps = {
  readonly search: AlignmentSearch;
  readonly body: SkyBody;
  readonly wanted: PicturePoint;
  /** Of the point. */
  readonly altitudeDeg: number;
  readonly shoot: Shoot;
  readonly spot: Spot;
  readonly onCancel: () => void;
  readonly onUse: (alignment: LitAlignment) => void;
};

/** How far the search is, what it found, or why there is nothing. */
export function AlignmentResults(props: AlignmentResultsProps): ReactNode {
  const { search, body, wanted, spot, onCancel, onUse } = props;
  switch (search.kind) {
    case 'not-asked':
      return null;
    case 'running':
      return (
        <p className="alignment-progress">
          <progress max={1} value={search.share} aria-label="How far the search is" />
          <button type="button" data-cancel-search onClick={onCancel}>
            Cancel
          </button>
        </p>
      );
    case 'failed':
      return (
        <p className="fault" role="alert" data-figure="alignment-failed">
          The search broke off: {search.message}
        </p>
      );
    case 'done': {
      if (!search.answer.ok)
        return (
          <p role="status" data-figure="no-alignment">
            {noDateText(search.answer.problem, { body, zone: spot.zone })}
          </p>
        );
      const { alignments, hiddenDates } = search.answer.value;
      return (
        <>
          <p role="status" data-figure="alignment-count">
            {countText(alignments, hiddenDates)} Times in {spot.zone}.
          </p>
          {body === 'sun' ? (
            <p className="caution" data-caution="sun">
              Never look at the sun through an optical finder or a long lens; ND filters and
              polarisers do not protect eyes.
            </p>
          ) : null}
          <AlignmentList alignments={alignments} wanted={wanted} zone={spot.zone} onUse={onUse} />
          <RestsOn {...props} />
        </>
      );
    }
  }
}

/** Below this the air lifts a body by some tenths of a degree more or less from day to day. */
const UNSTEADY_BELOW_DEG = 2;

function RestsOn({ body, altitudeDeg, shoot, spot }: AlignmentResultsProps): ReactNode {
  return (
    <p className="quiet" data-figure="alignment-rests-on">
      Whole minutes; the {body} good to 0.02°, the air’s lift that of a mild day at sea level
      {altitudeDeg < UNSTEADY_BELOW_DEG
        ? ', and so near the horizon some tenths of a degree more or less'
        : ''}
      . Skyline: {skylineOrigins(shoot, spot)}. Light: the model under{' '}
      {CONDITION_NAMES[shoot.condition]}, ± holds eight of ten minutes; what the sky of a date will
      be is not known. In hand and short by at the middle of the spread.
    </p>
  );
}
