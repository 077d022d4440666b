import type { ReactNode } from 'react';

import type { Setup } from '../../../core/plan/setup-schema.ts';
import { DEFAULT_PATCH_SIZE } from '../../../core/sky/patch.ts';
import { NumberField } from '../../ui/NumberField.tsx';
import type { AskedProps } from './asked-props.ts';
import { Group } from './Group.tsx';
import { patchText } from './patch-text.ts';
import { useSetupEdit } from './use-setup-edit.ts';

type OwnPatch = NonNullable<Setup['patch']>;

const NUMBERS = [
  { key: 'xFraction', id: 'patch-x', label: 'Right of the centre', min: -50, max: 50 },
  { key: 'yFraction', id: 'patch-y', label: 'Above the centre', min: -50, max: 50 },
  { key: 'widthFraction', id: 'patch-width', label: 'Width', min: 1, max: 100 },
  { key: 'heightFraction', id: 'patch-height', label: 'Height', min: 1, max: 100 },
] as const;

/** The patch of sky that the hold counts from: beside the head, or a rectangle of one's own. */
export function PatchFields({ setupId, setup, view }: AskedProps): ReactNode {
  const put = useSetupEdit(setupId);
  const read = view?.light.patch ?? null;
  const own = setup.patch;
  const start: OwnPatch = read ?? { xFraction: 0.25, yFraction: 0.2, ...DEFAULT_PATCH_SIZE };
  return (
    <Group
      title="Patch of sky"
      id="patch"
      aside={
        <>
          <span className="quiet" data-figure="patch-place">
            {read === null
              ? 'No place beside the head is half sky: the whole sky in frame stands in.'
              : patchText(read)}
          </span>
          {own === null ? (
            <button
              type="button"
              data-own-patch
              onClick={() => put('own patch', { patch: { ...start } })}
            >
              Place it yourself
            </button>
          ) : (
            <button
              type="button"
              data-default-patch
              onClick={() => put('patch beside the head', { patch: null })}
            >
              Back beside the head
            </button>
          )}
        </>
      }
    >
      {own === null
        ? null
        : NUMBERS.map(({ key, id, label, min, max }) => (
            <NumberField
              key={key}
              label={label}
              field={id}
              value={Math.round(own[key] * 1000) / 10}
              unit="%"
              min={min}
              max={max}
              step={1}
              digits={1}
              onCommit={(value) =>
                value !== null && put('patch', { patch: { ...own, [key]: value / 100 } })
              }
            />
          ))}
    </Group>
  );
}
