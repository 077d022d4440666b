import type { ReactNode } from 'react';

import { inOrder, orderKeyAtEnd } from '../../../../core/plan/order-key.ts';
import type { Spot } from '../../../../core/plan/shoot.ts';
import { editSiteEntry, putSiteEntry, removeSiteEntry } from '../../../../core/plan/site-edits.ts';
import { SURFACE_KINDS } from '../../../../core/plan/spot-schema.ts';
import { useEditShoot } from '../../../state/documents.tsx';
import { useServices } from '../../../state/services.ts';
import { NumberField } from '../../../ui/NumberField.tsx';
import { SelectField } from '../../../ui/SelectField.tsx';
import { TextField } from '../../../ui/TextField.tsx';

const KIND_WORDS = { ground: 'ground', wall: 'wall', panel: 'panel' } as const;

type SurfaceListProps = {
  readonly spotId: string;
  readonly spot: Spot;
  readonly put: (what: string, fields: Partial<Spot>) => void;
};

/** Walls, ground and panels that light can be bounced from, each with what it reflects. */
export function SurfaceList({ spotId, spot, put }: SurfaceListProps): ReactNode {
  const edit = useEditShoot();
  const { newId } = useServices();
  const label = `surfaces of ${spot.name}`;
  return (
    <>
      <p className="quiet">
        What lies round the subject as ground lights it from below; walls and panels can be bounced
        from. 0 takes all light, 0.9 is fresh white paint.
      </p>
      <ul className="site-list">
        {inOrder(spot.surfaces).map(([id, surface]) => {
          const change = (fields: Partial<typeof surface>): void =>
            edit(label, editSiteEntry(spotId, 'surfaces', id, fields));
          return (
            <li key={id} data-surface={id}>
              <TextField
                label="Surface"
                field="surface-name"
                maxLength={120}
                value={surface.name}
                faultOf={(text) => (text.trim() === '' ? 'expected a name, found nothing' : null)}
                onCommit={(name) => change({ name })}
              />
              <SelectField
                label="Is"
                field="surface-kind"
                value={surface.kind}
                options={SURFACE_KINDS.map((value) => ({ value, text: KIND_WORDS[value] }))}
                onChoose={(kind) => change({ kind })}
              />
              <NumberField
                label="Reflects"
                field="surface-reflectance"
                unit="of 1"
                value={surface.reflectance}
                min={0}
                max={0.95}
                step={0.01}
                digits={2}
                onCommit={(reflectance) => reflectance !== null && change({ reflectance })}
              />
              <TextField
                label="Colour, size, how far"
                field="surface-note"
                value={surface.note}
                onCommit={(note) => change({ note })}
              />
              <div className="site-buttons">
                {surface.kind === 'ground' ? (
                  <button
                    type="button"
                    data-use-as-ground={id}
                    onClick={() =>
                      put('ground', {
                        groundReflectance: surface.reflectance,
                        groundNote: surface.name,
                      })
                    }
                  >
                    It lies round the subject
                  </button>
                ) : null}
                <button
                  type="button"
                  aria-label={`Remove ${surface.name}`}
                  data-remove-surface={id}
                  onClick={() => edit(label, removeSiteEntry(spotId, 'surfaces', id))}
                >
                  Remove
                </button>
              </div>
            </li>
          );
        })}
      </ul>
      <button
        type="button"
        data-add-surface
        onClick={() =>
          edit(
            label,
            putSiteEntry(spotId, 'surfaces', newId(), {
              order: orderKeyAtEnd(spot.surfaces),
              name: 'White wall',
              kind: 'wall',
              reflectance: 0.8,
              note: '',
            }),
          )
        }
      >
        Add a surface
      </button>
    </>
  );
}
