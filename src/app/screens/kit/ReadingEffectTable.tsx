import { useDeferredValue, useMemo, type ReactNode } from 'react';

import { formatMeterAperture } from '../../../core/exposure/aperture-scale.ts';
import type { Reading } from '../../../core/plan/kit.ts';
import type { ModifiedHead } from '../../../core/plan/modified-head.ts';
import { readingEffect, type Standing } from '../../../core/plan/reading-effect.ts';
import { flashFNumber } from '../../../core/strobe/guide-number.ts';
import { useKit, useShoot } from '../../state/documents.tsx';
import { inHandText, signedTenths, spreadText } from '../../ui/figure-text.ts';
import { ORIGIN_NAMES } from '../../ui/origin-names.ts';

type ReadingEffectTableProps = {
  readonly headId: string;
  readonly modifierId: string;
  readonly reading: Reading;
};

const SHOWN_AT_M = 2;

/** What keeping the reading would change: the head's figure, and every setup that uses it. */
export function ReadingEffectTable(props: ReadingEffectTableProps): ReactNode {
  const { headId, modifierId } = props;
  const shoot = useShoot();
  const kit = useKit();
  const reading = useDeferredValue(props.reading);
  const effect = useMemo(
    () => readingEffect({ shoot, kit }, { headId, modifierId, reading }),
    [shoot, kit, headId, modifierId, reading],
  );
  if (effect === null) return null;
  const { before, after, changedStops, setups } = effect;
  return (
    <>
      <table className="figures">
        <caption>
          Kept, it changes by{' '}
          <strong data-figure="reading-change">{signedTenths(changedStops)}</strong> stops
        </caption>
        <thead>
          <tr>
            <th scope="col">What</th>
            <th scope="col">Now</th>
            <th scope="col">Kept</th>
          </tr>
        </thead>
        <tbody>
          <tr>
            <th scope="row">Meter at {SHOWN_AT_M} m, full power, ISO 100</th>
            <td data-figure="reading-before">{figureText(before)}</td>
            <td data-figure="reading-after">{figureText(after)}</td>
          </tr>
          {setups.map((setup) => (
            <tr key={setup.setupId}>
              <th scope="row">{setup.name}, first frame</th>
              <td data-figure={`reading-before-${setup.setupId}`}>{standingText(setup.before)}</td>
              <td data-figure={`reading-after-${setup.setupId}`}>{standingText(setup.after)}</td>
            </tr>
          ))}
        </tbody>
      </table>
      {setups.length === 0 ? (
        <p className="quiet">No setup of this shoot uses this head through this modifier.</p>
      ) : null}
    </>
  );
}

const figureText = (head: ModifiedHead): string =>
  `${formatMeterAperture(flashFNumber({ ...head, distanceM: SHOWN_AT_M }, { powerStops: 0, iso: 100 }))}, ${spreadText(head.spreadStops)}, ${ORIGIN_NAMES[head.origin]}`;

const standingText = ({ inHandStops, works, spreadStops }: Standing): string =>
  `${inHandText(inHandStops)}, figure ${spreadText(spreadStops)}${works || inHandStops < 0 ? '' : ', but something else stops it'}`;
