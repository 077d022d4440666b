import './filters-and-colour.css';
import type { ReactNode } from 'react';

import type { Kit } from '../../../core/plan/kit.ts';
import { lensStack, type LensStack } from '../../../core/plan/lens-stack.ts';
import type { SetupView } from '../../../core/plan/setup-view.ts';
import { tenths } from '../../ui/figure-text.ts';
import {
  depthText,
  evenText,
  focusText,
  graduatedFaceText,
  graduationText,
  polariserText,
  shiftText,
  threadText,
} from './stack-text.ts';

type StackNotesProps = { readonly view: SetupView; readonly kit: Kit };

/** What the filters before the lens come to. */
export function StackNotes({ view, kit }: StackNotesProps): ReactNode {
  const stack = lensStack(view, kit);
  if (stack === null || stack.filters.length === 0) return null;
  const { figures, evenStops, threads, focus, shutByStops } = stack;
  return (
    <div className="stack-notes">
      {shutByStops > 0 ? (
        <p role="alert" data-note="shut-stack">
          No exposure opens this stack: with the slowest shutter, the widest aperture and the
          highest ISO that are allowed it is {tenths(shutByStops)} stops too dark. Take a filter
          off.
        </p>
      ) : null}
      <ul>
        <li data-figure="stack-stops">{evenText(evenStops)}</li>
        {figures.miredShift === 0 && figures.greenStops === 0 ? null : (
          <li>
            Colour of the stack: <span data-figure="stack-colour">{shiftText(figures)}</span>
          </li>
        )}
        <li data-figure="stack-depth" data-cut={figures.depthMm > stack.roomMm}>
          {depthText(stack)}
        </li>
        {threads.map(({ id, filter, fit }) => {
          const text = threadText(filter, fit);
          return text === null ? null : (
            <li key={id} data-note={`thread-${id}`}>
              {text}
            </li>
          );
        })}
        <li data-figure="autofocus">{focusText(focus)}</li>
        <PolariserLines stack={stack} view={view} />
        <GraduatedLines stack={stack} />
      </ul>
    </div>
  );
}

type LinesProps = { readonly stack: LensStack };

function PolariserLines({
  stack: { polariser, filters },
  view,
}: LinesProps & { readonly view: SetupView }): ReactNode {
  if (polariser === null) return null;
  return (
    <>
      {view.light.skyInFrame?.patchIsFrame === true ? null : (
        <li>
          Polariser on the patch:{' '}
          <span data-figure="polariser-patch">{polariserText(polariser.patch)}</span>
        </li>
      )}
      <li>
        Polariser on the sky in frame:{' '}
        <span data-figure="polariser-frame">{polariserText(polariser.frame)}</span>
      </li>
      {filters.some(([, { kind }]) => kind === 'variable-nd') ? (
        <li data-note="polariser-on-variable">
          A variable ND is two polarisers: with a third before it the stops are anybody’s guess.
        </li>
      ) : null}
    </>
  );
}

function GraduatedLines({ stack: { graduated } }: LinesProps): ReactNode {
  if (graduated === null) return null;
  const { patchStops, frameStops } = graduated;
  return (
    <>
      <li>
        Graduated filter, {tenths(graduated.stops)} stops, darkens{' '}
        <span data-figure="graduation">{graduationText(graduated)}</span>
        {patchStops === null || frameStops === null ? null : (
          <>
            : <span data-figure="graduated-patch">{tenths(patchStops)}</span> on the patch,{' '}
            <span data-figure="graduated-frame">{tenths(frameStops)}</span> on the mean of the sky
          </>
        )}
      </li>
      <li data-figure="graduated-face">On the heads: {graduatedFaceText(graduated)}</li>
    </>
  );
}
