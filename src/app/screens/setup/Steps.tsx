import type { ReactNode } from 'react';

import type { SetupSource } from '../../../core/plan/setup-source.ts';
import type { LightRole } from '../../../core/plan/setup-schema.ts';
import type { LitLight } from '../../../core/strobe/recipe.ts';
import { AllOnStep } from './AllOnStep.tsx';
import { CameraStep } from './CameraStep.tsx';
import { LightStep } from './LightStep.tsx';
import { LastLines } from './LastLines.tsx';
import type { StepsProps } from './steps-props.ts';

const WORKING_ORDER: readonly LightRole[] = ['key', 'fill', 'rim', 'cross', 'background'];

/** Heads off, then one light at a time, then all of them, with what to see after each. */
export function Steps(props: StepsProps): ReactNode {
  const { view, working } = props;
  const lit = view.sources.flatMap(
    (source, place): readonly (readonly [SetupSource, LitLight])[] => {
      const light = working.recipe.lights[place];
      return light === undefined ? [] : [[source, light]];
    },
  );
  const ordered = WORKING_ORDER.flatMap((role) => lit.filter(([{ light }]) => light.role === role));
  return (
    <>
      <ol className="steps">
        <CameraStep {...props} />
        {ordered.map(([source, light], at) => (
          <LightStep key={source.lightId} {...props} number={at + 2} source={source} lit={light} />
        ))}
        <AllOnStep {...props} number={ordered.length + 2} />
      </ol>
      <LastLines {...props} />
    </>
  );
}
