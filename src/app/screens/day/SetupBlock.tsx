import './setup-block.css';
import { memo, useMemo, type CSSProperties, type KeyboardEvent, type ReactNode } from 'react';

import { editSetup } from '../../../core/plan/edits.ts';
import type { SetupColumn } from '../../../core/plan/setup-column.ts';
import type { Setup } from '../../../core/plan/setup-schema.ts';
import type { Shoot } from '../../../core/plan/shoot.ts';
import { dayBoundsMs } from '../../../core/units/civil-time.ts';
import type { PlotFrame } from '../../charts/plot-frame.ts';
import { verdictSpans } from '../../charts/verdict-spans.ts';
import { useEditShoot, useKit, useShoot } from '../../state/documents.tsx';
import { look } from '../../state/view.ts';
import { blockState, partText } from './block-state.ts';
import {
  blockEndMs,
  blockFields,
  blockSpanText,
  blockTime,
  movedBlock,
  stretchedBlock,
  type BlockTime,
} from './block-time.ts';
import { useBlockDrag } from './use-block-drag.ts';
import { useWritten } from './use-written.ts';

type SetupBlockProps = {
  readonly setupId: string;
  readonly setup: Setup;
  readonly zone: string;
  readonly frame: PlotFrame;
  readonly lane: number;
  readonly shown: boolean;
  readonly column: SetupColumn | null;
};

/** Of the sentence that says which keys move a block. */
export const BLOCK_KEYS_ID = 'block-keys';

/** A setup on its column: moved, stretched, chosen and opened; solved anew wherever it goes. */
export const SetupBlock = memo(function SetupBlock(props: SetupBlockProps): ReactNode {
  const { setupId, setup, zone, frame, lane, shown, column } = props;
  const shoot = useShoot();
  const kit = useKit();
  const edit = useEditShoot();
  const day = useMemo(() => dayBoundsMs(shoot.date, zone), [shoot.date, zone]);
  const saved = useMemo(() => blockTime(setup, shoot.date, zone), [setup, shoot.date, zone]);
  const choose = (block: BlockTime): void =>
    look({ spotId: setup.spotId, setupId, minuteMs: block.startMs });
  const [written, setWritten] = useWritten(saved);
  const write = (block: BlockTime): void => {
    const fields = blockFields(block, zone);
    if (fields.startClock !== setup.startClock || fields.durationMin !== setup.durationMin) {
      edit(`time of ${setup.name}`, editSetup(setupId, fields));
      setWritten(block);
    }
    choose(block);
  };
  const { draft, setDraft, handlers } = useBlockDrag({
    block: saved,
    day,
    msPerPx: ({ parentElement }) =>
      (frame.endMs - frame.startMs) / Math.max(1, parentElement?.clientHeight ?? 1),
    onClick: () => choose(saved),
    onDone: write,
  });
  const block = draft ?? written ?? saved;
  const question = onlySetup(shoot, setupId);
  const state = useMemo(() => {
    const alone: Shoot = JSON.parse(question);
    return blockState(alone, kit, setupId, block.startMs);
  }, [question, kit, setupId, block.startMs]);
  const spans = useMemo(
    () =>
      column === null
        ? []
        : verdictSpans({
            column,
            faceAmbientEv: setup.shaded ? column.ambientShadedEv : column.ambientOutEv,
          }),
    [column, setup.shaded],
  );
  const part = partText(spans, block, state.works, zone);
  const time = blockSpanText(block, zone);

  const onKeyDown = (event: KeyboardEvent): void => {
    if (event.key === 'Enter' || event.key === ' ') {
      event.preventDefault();
      choose(block);
      if (event.key === 'Enter') window.location.hash = '#/setup';
      return;
    }
    const way = event.key === 'ArrowUp' ? -1 : event.key === 'ArrowDown' ? 1 : 0;
    if (way === 0) return;
    event.preventDefault();
    const byMin = way * (event.shiftKey ? 1 : 5);
    setDraft(event.altKey ? stretchedBlock(block, byMin) : movedBlock(block, byMin, day));
  };
  /** Keys that are let go, or a focus that leaves, write what was moved. */
  const settle = (): void => {
    if (draft === null) return;
    setDraft(null);
    write(draft);
  };

  const total = frame.endMs - frame.startMs;
  const place: CSSProperties & { readonly '--lane': number } = {
    top: `${(100 * (block.startMs - frame.startMs)) / total}%`,
    height: `${(100 * (blockEndMs(block) - block.startMs)) / total}%`,
    '--lane': lane,
  };
  return (
    <div
      className="block"
      role="button"
      tabIndex={0}
      style={place}
      data-block={setupId}
      data-works={state.works}
      data-moving={draft !== null || undefined}
      aria-pressed={shown}
      aria-label={[setup.name, time, state.recipe, state.verdict, part].filter(Boolean).join(', ')}
      aria-describedby={BLOCK_KEYS_ID}
      onKeyDown={onKeyDown}
      onKeyUp={(event) => event.key.startsWith('Arrow') && settle()}
      onBlur={settle}
      {...handlers}
    >
      <div className="block-card">
        <div className="block-text">
          <b>{draft === null ? setup.name : time}</b>
          <strong data-figure={`block-${setupId}`}>{state.verdict}</strong>
          {state.recipe === '' && part === '' ? null : (
            <span>{[state.recipe, part].filter(Boolean).join(' · ')}</span>
          )}
        </div>
        <i data-block-edge />
      </div>
    </div>
  );
});

/** The shoot with nothing else in it, as text: the same text as long as nothing that counts changed. */
const onlySetup = (shoot: Shoot, setupId: string): string => {
  const setup = shoot.setups[setupId];
  const spot = setup && shoot.spots[setup.spotId];
  return JSON.stringify({
    ...shoot,
    setups: setup === undefined ? {} : { [setupId]: setup },
    spots: setup === undefined || spot === undefined ? {} : { [setup.spotId]: spot },
  });
};
