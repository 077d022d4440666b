import type { ReactNode } from 'react';

import { framingOf } from '../../../core/plan/picture-geometry.ts';
import type { SetupView } from '../../../core/plan/setup-view.ts';
import type { Setup } from '../../../core/plan/setup-schema.ts';
import type { Spot } from '../../../core/plan/shoot.ts';
import { instantAtClock } from '../../../core/units/civil-time.ts';
import { useShoot } from '../../state/documents.tsx';
import { headingText, holdText } from './heading-text.ts';

type HeadingProps = {
  readonly setup: Setup;
  readonly spot: Spot;
  readonly view: SetupView | null;
};

export function Heading({ setup, spot, view }: HeadingProps): ReactNode {
  const { date } = useShoot();
  const startMs = instantAtClock(date, setup.startClock, spot.zone);
  return (
    <div className="setup-heading">
      <h1 data-figure="setup-name">{setup.name}</h1>
      <p className="quiet">
        <span data-figure="where-and-when">
          {headingText({ spot, setup, framing: framingOf(setup, spot), startMs })}
        </span>
        {view === null ? null : (
          <>
            {' · '}
            <span data-figure="hold">{holdText(view)}</span>
          </>
        )}
      </p>
    </div>
  );
}
