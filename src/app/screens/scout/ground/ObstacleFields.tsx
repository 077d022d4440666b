import type { ReactNode } from 'react';

import { ASSUMED_ORIGIN, DRAWN_ORIGIN } from '../../../../core/plan/new-obstacle.ts';
import { editObstacle, removeObstacle } from '../../../../core/plan/obstacle-edits.ts';
import {
  OBSTACLE_KINDS,
  type ObstacleEntry,
  type ObstacleKind,
} from '../../../../core/plan/obstacle-schema.ts';
import { isSolid } from '../../../../core/skyline/obstacle.ts';
import { simpleRings } from '../../../../core/skyline/simple-rings.ts';
import { formatDate } from '../../../../core/units/civil-time.ts';
import { useEditShoot } from '../../../state/documents.tsx';
import { lookAtGround } from '../../../state/ground-view.ts';
import { say } from '../../../state/view.ts';
import { NumberField } from '../../../ui/NumberField.tsx';
import { SelectField } from '../../../ui/SelectField.tsx';
import { TextField } from '../../../ui/TextField.tsx';
import { CornerTable } from './CornerTable.tsx';
import { KIND_WORDS } from './obstacle-words.ts';

type ObstacleFieldsProps = { readonly id: string; readonly obstacle: ObstacleEntry };

const CROWN_FIELDS = [
  { key: 'passesInLeaf', label: 'Light passed in leaf', field: 'passes-in-leaf' },
  { key: 'passesBare', label: 'Light passed bare', field: 'passes-bare' },
] as const;

/** Everything that is known of one obstacle, each fact a field. */
export function ObstacleFields({ id, obstacle }: ObstacleFieldsProps): ReactNode {
  const edit = useEditShoot();
  const put = (what: string, fields: Partial<ObstacleEntry>): void =>
    edit(`${what} of ${obstacle.name}`, editObstacle(id, fields));
  return (
    <div className="obstacle-fields" data-obstacle-fields={id}>
      <TextField
        label="Name"
        field="obstacle-name"
        maxLength={120}
        value={obstacle.name}
        faultOf={(text) => (text.trim() === '' ? 'found nothing, expected a name' : null)}
        onCommit={(text) => put('name', { name: text.trim() })}
      />
      <div className="fields">
        <SelectField
          label="Kind"
          field="obstacle-kind"
          value={obstacle.kind}
          options={OBSTACLE_KINDS.map((value) => ({ value, text: KIND_WORDS[value] }))}
          onChoose={(kind) => put('kind', asKind(kind))}
        />
        <NumberField
          label="Height above its foot"
          unit="m"
          field="obstacle-height"
          value={obstacle.heightM}
          min={0.1}
          max={1000}
          step={0.5}
          digits={2}
          onCommit={(value) => value !== null && put('height', measured(obstacle, value))}
        />
        {obstacle.kind === 'trees' ? (
          <>
            <NumberField
              label="Crown begins at"
              unit="m"
              field="crown-base"
              value={obstacle.crownBaseM}
              min={0}
              max={100}
              step={0.5}
              digits={2}
              onCommit={(value) => value !== null && put('crown', { crownBaseM: value })}
            />
            {CROWN_FIELDS.map(({ key, label, field }) => (
              <NumberField
                key={key}
                label={label}
                unit="%"
                field={field}
                value={obstacle[key] * 100}
                min={0}
                max={100}
                step={5}
                digits={1}
                onCommit={(value) => value !== null && put('leaves', { [key]: value / 100 })}
              />
            ))}
          </>
        ) : null}
        <NumberField
          label="Foot above sea level"
          unit="m"
          field="foot-elevation"
          value={obstacle.footElevationM}
          optional
          min={-450}
          max={9000}
          step={1}
          digits={1}
          note={obstacle.footElevationM === null ? 'empty: on the spot’s level' : undefined}
          onCommit={(footElevationM) => put('foot', { footElevationM })}
        />
      </div>
      <TextField
        label="Where its outline and height come from"
        field="obstacle-origin"
        maxLength={4000}
        value={obstacle.origin}
        onCommit={(origin) => put('origin', { origin })}
      />
      <p className="quiet" data-figure="obstacle-dated">
        {obstacle.origin === '' ? 'Origin not noted' : obstacle.origin};{' '}
        {formatDate(obstacle.dated, 'en-GB')}
      </p>
      {crossesItself(obstacle) ? (
        <p className="fault" data-note="crosses-itself">
          The outline crosses itself: kept, each of its loops counts.
        </p>
      ) : null}
      <CornerTable
        corners={obstacle.outline}
        closed={obstacle.closed}
        onChange={(outline) => put('corners', { outline: outline.map(([x, y]) => [x, y]) })}
      />
      <button
        type="button"
        data-remove-obstacle={id}
        onClick={() => {
          edit(`remove ${obstacle.name}`, removeObstacle(id));
          lookAtGround({ obstacleId: null });
          say(`Removed ${obstacle.name}. Undo brings it back`);
        }}
      >
        Remove {obstacle.name}
      </button>
    </div>
  );
}

const crossesItself = (obstacle: ObstacleEntry): boolean =>
  isSolid(obstacle) && simpleRings(obstacle.outline).length > 1;

/** A height that was written is no longer assumed. */
const measured = ({ origin }: ObstacleEntry, heightM: number): Partial<ObstacleEntry> =>
  origin === ASSUMED_ORIGIN ? { heightM, origin: DRAWN_ORIGIN } : { heightM };

/** What is built lets no light through. */
const asKind = (kind: ObstacleKind): Partial<ObstacleEntry> =>
  kind === 'trees' ? { kind } : { kind, crownBaseM: 0, passesInLeaf: 0, passesBare: 0 };
