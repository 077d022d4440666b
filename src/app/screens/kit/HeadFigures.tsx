import type { ReactNode } from 'react';

import { formatMeterAperture } from '../../../core/exposure/aperture-scale.ts';
import type { Head, Modifier } from '../../../core/plan/kit.ts';
import { headWithModifier } from '../../../core/plan/modified-head.ts';
import { inOrder } from '../../../core/plan/order-key.ts';
import { flashFNumber } from '../../../core/strobe/guide-number.ts';
import { useKit } from '../../state/documents.tsx';
import { spreadText } from '../../ui/figure-text.ts';
import { ORIGIN_NAMES } from '../../ui/origin-names.ts';

const SHOWN_AT_M = 2;

/** What the head gives through each modifier of the kit, and how well that is known. */
export function HeadFigures({ head }: { readonly head: Head }): ReactNode {
  const { modifiers } = useKit();
  return (
    <table className="figures">
      <caption className="quiet">
        Full power, ISO 100, flash alone, flat receptor to the light, {SHOWN_AT_M} m from the
        modifier’s face, front diffuser on
      </caption>
      <thead>
        <tr>
          <th scope="col">Through</th>
          <th scope="col">Meter</th>
          <th scope="col">Known from</th>
        </tr>
      </thead>
      <tbody>
        {inOrder(modifiers).map(([id, modifier]) => (
          <Row key={id} head={head} modifierId={id} modifier={modifier} />
        ))}
      </tbody>
    </table>
  );
}

function Row(props: {
  readonly head: Head;
  readonly modifierId: string;
  readonly modifier: Modifier;
}): ReactNode {
  const { modifier, modifierId } = props;
  const light = { diffuser: modifier.diffuserStops !== null, baffle: false, grid: false };
  const output = headWithModifier({ ...props, gel: null, light });
  const fNumber = flashFNumber({ ...output, distanceM: SHOWN_AT_M }, { powerStops: 0, iso: 100 });
  return (
    <tr>
      <th scope="row">{modifier.name}</th>
      <td data-figure={`meter-${modifierId}`}>{formatMeterAperture(fNumber)}</td>
      <td className="quiet">
        {ORIGIN_NAMES[output.origin]}, {spreadText(output.spreadStops)}
      </td>
    </tr>
  );
}
