import type { ReactNode } from 'react';

import { editShoot } from '../../core/plan/edits.ts';
import { addDays, formatDate, isCivilDate } from '../../core/units/civil-time.ts';
import { useEditShoot, useShoot } from '../state/documents.tsx';
import { Dialog } from '../ui/Dialog.tsx';
import { TextField } from '../ui/TextField.tsx';
import { ExportPart } from './ExportPart.tsx';
import { ImportPart } from './ImportPart.tsx';
import { ShootsPart } from './ShootsPart.tsx';
import { SourcesPart } from './SourcesPart.tsx';
import './shoot-sheet.css';

type ShootSheetProps = {
  readonly onClose: () => void;
  readonly onOpenShoot: (id: string) => void;
};

/** Title and date of the open shoot, the others on this device, export and import. */
export function ShootSheet({ onClose, onOpenShoot }: ShootSheetProps): ReactNode {
  const shoot = useShoot();
  const edit = useEditShoot();
  const onDate = (date: string): void => edit('date of the shoot', editShoot({ date }));
  return (
    <Dialog title="Shoot" onClose={onClose}>
      <div className="shoot-sheet">
        <TextField
          label="Title"
          field="title"
          maxLength={120}
          value={shoot.title}
          faultOf={(text) =>
            text.trim() === '' ? 'found nothing, expected a title of 1 to 120 characters' : null
          }
          onCommit={(title) => edit('title of the shoot', editShoot({ title }))}
        />
        <div className="date-row">
          <TextField
            label={`Date, ${formatDate(shoot.date, 'en-GB')}`}
            field="date"
            maxLength={10}
            value={shoot.date}
            faultOf={(text) =>
              isCivilDate(text)
                ? null
                : `found ‘${text}’, expected a date that exists, as 2027-05-14`
            }
            onCommit={onDate}
          />
          <button type="button" onClick={() => onDate(addDays(shoot.date, -1))}>
            Day before
          </button>
          <button type="button" onClick={() => onDate(addDays(shoot.date, 1))}>
            Day after
          </button>
        </div>
        <ShootsPart onOpenShoot={onOpenShoot} />
        <ExportPart />
        <ImportPart onOpenShoot={onOpenShoot} />
        <SourcesPart />
      </div>
    </Dialog>
  );
}
