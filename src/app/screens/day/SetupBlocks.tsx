import { useMemo, type ReactNode } from 'react';

import type { SetupColumn } from '../../../core/plan/setup-column.ts';
import type { Setup } from '../../../core/plan/setup-schema.ts';
import type { PlotFrame } from '../../charts/plot-frame.ts';
import { shareOf } from '../../charts/strip-time.ts';
import { useShoot } from '../../state/documents.tsx';
import { blockEndMs, blockTime } from './block-time.ts';
import { SetupBlock } from './SetupBlock.tsx';

type SetupBlocksProps = {
  readonly setups: readonly (readonly [id: string, setup: Setup])[];
  readonly zone: string;
  readonly frame: PlotFrame;
  readonly shownId: string | null;
  readonly columnOf: (setupId: string) => SetupColumn | null;
};

/** A block's text needs at least this share of the plot's height. */
const TEXT_SHARE = 0.1;

/** The setups of a spot on its column; what stands over another is moved in a little. */
export function SetupBlocks({
  setups,
  zone,
  frame,
  shownId,
  columnOf,
}: SetupBlocksProps): ReactNode {
  const { date } = useShoot();
  const lanes = useMemo(() => blockLanes(setups, date, zone, frame), [setups, date, zone, frame]);
  return setups.map(([id, setup]) => (
    <SetupBlock
      key={id}
      setupId={id}
      setup={setup}
      zone={zone}
      frame={frame}
      lane={lanes.get(id) ?? 0}
      shown={id === shownId}
      column={columnOf(id)}
    />
  ));
}

function blockLanes(
  setups: SetupBlocksProps['setups'],
  date: string,
  zone: string,
  frame: PlotFrame,
): ReadonlyMap<string, number> {
  const blocks = setups
    .map(([id, setup]) => {
      const block = blockTime(setup, date, zone);
      const top = shareOf(block.startMs, frame);
      return { id, top, bottom: Math.max(shareOf(blockEndMs(block), frame), top + TEXT_SHARE) };
    })
    .toSorted((one, other) => one.top - other.top);
  const lanes = new Map<string, number>();
  const ends: number[] = [];
  for (const { id, top, bottom } of blocks) {
    const free = ends.findIndex((end) => end <= top);
    const lane = free === -1 ? ends.length : free;
    ends[lane] = bottom;
    lanes.set(id, lane);
  }
  return lanes;
}
