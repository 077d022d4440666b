import type { ReactNode } from 'react';

import { formatIso } from '../../../core/exposure/iso-scale.ts';
import type { SetupCaseInput } from '../../../core/plan/setup-case.ts';
import { filtersOf } from '../../../core/plan/setup-filters.ts';
import type { SetupView } from '../../../core/plan/setup-view.ts';
import { DialRow } from './DialRow.tsx';
import { PinnedFilters } from './PinnedFilters.tsx';
import { Pin } from './Pin.tsx';
import { apertureText, filtersText, shutterText } from '../../ui/recipe-text.ts';
import { useSetupEdit } from './use-setup-edit.ts';

type DialsProps = { readonly asked: SetupCaseInput; readonly view: SetupView };

/** Shutter, aperture, ISO and filters, each free or pinned. */
export function Dials({ asked, view }: DialsProps): ReactNode {
  const { kit, setupId } = asked;
  const { setup, answer, input } = view;
  const put = useSetupEdit(setupId);
  const camera = kit.cameras[setup.cameraId];
  const recipe = answer.ok ? answer.value.recipe : null;
  return (
    <div className="dials">
      <DialRow
        what="shutter"
        label="Shutter"
        bounds={{ min: 1 / 64000, max: 900, unit: 's' }}
        shown={recipe?.shutterS ?? null}
        pinned={setup.pinnedShutterS}
        pinsAt={recipe?.shutterS ?? input.camera.syncShutterS}
        write={(value) => shutterText(value, camera)}
        onPin={(value) => put('shutter pin', { pinnedShutterS: value })}
      />
      <DialRow
        what="aperture"
        label="Aperture"
        bounds={{ min: 0.7, max: 128, unit: '' }}
        shown={recipe?.fNumber ?? null}
        pinned={setup.pinnedFNumber}
        pinsAt={
          recipe?.fNumber ??
          Math.min(Math.max(setup.wishFNumber, input.lens.minFNumber), input.lens.maxFNumber)
        }
        write={(value) => apertureText(value, camera)}
        onPin={(value) => put('aperture pin', { pinnedFNumber: value })}
      />
      <DialRow
        what="iso"
        label="ISO"
        bounds={{ min: 25, max: 409600, unit: '' }}
        shown={recipe?.iso ?? null}
        pinned={setup.pinnedIso}
        pinsAt={recipe?.iso ?? input.camera.baseIso}
        write={formatIso}
        onPin={(value) => put('ISO pin', { pinnedIso: value })}
      />
      <div className="dial" data-pinned={setup.pinnedFilterIds !== null}>
        <span className="label">Filters</span>
        {setup.pinnedFilterIds === null ? (
          <span className="value">{answer.ok ? filtersText(answer.value.filters) : 'free'}</span>
        ) : (
          <PinnedFilters
            kit={kit}
            ids={setup.pinnedFilterIds}
            graduationFraction={setup.graduationFraction}
            onChange={(ids) => put('filter pin', { pinnedFilterIds: ids })}
            onGraduation={(graduationFraction) => put('graduated filter', { graduationFraction })}
          />
        )}
        <Pin
          what="filters"
          name="the filters"
          on={setup.pinnedFilterIds !== null}
          onTurn={(on) =>
            put('filter pin', { pinnedFilterIds: on ? filterIdsNow(asked, view) : null })
          }
        />
      </div>
    </div>
  );
}

function filterIdsNow({ kit }: SetupCaseInput, { answer, setup }: SetupView): Record<string, true> {
  if (!answer.ok) return {};
  const filters = filtersOf(setup, kit, answer.value.recipe);
  return Object.fromEntries(filters.map(([id]) => [id, true] as const));
}
