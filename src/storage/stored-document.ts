import { checkDocument, type DocumentFault } from '../core/plan/check-document.ts';
import type { DocumentKind } from '../core/plan/history-entry.ts';
import { KIT } from '../core/plan/kit.ts';
import { missingSpotFaults } from '../core/plan/references.ts';
import { KIT_STEPS, SHOOT_STEPS, upgradeDocument } from '../core/plan/shoot-upgrades.ts';
import { SHOOT } from '../core/plan/shoot.ts';
import { fail, ok, type Result } from '../core/units/result.ts';
import type { DocumentOf } from './shoot-repository.ts';

/** What may be written: schema kept, every setup's spot there. */
export function checkedDocument<Kind extends DocumentKind>(
  kind: Kind,
  value: unknown,
): Result<DocumentOf<Kind>, readonly DocumentFault[]> {
  if (kind === 'kit')
    return checkDocument(KIT, value) as Result<DocumentOf<Kind>, readonly DocumentFault[]>;
  const checked = checkDocument(SHOOT, value);
  if (!checked.ok) return checked;
  const missing = missingSpotFaults(checked.value);
  return missing.length > 0 ? fail(missing) : ok(checked.value as DocumentOf<Kind>);
}

/** What was written by this version or an earlier one, as this version has it. */
export function openedDocument<Kind extends DocumentKind>(
  kind: Kind,
  stored: object,
): Result<DocumentOf<Kind>, readonly DocumentFault[]> {
  const steps = kind === 'kit' ? KIT_STEPS : SHOOT_STEPS;
  const upgraded = upgradeDocument({ ...stored }, steps);
  if (upgraded.ok) return checkedDocument(kind, upgraded.value);
  return fail([
    {
      path: 'version',
      expected: `a version up to ${steps.length + 1}`,
      found: 'version' in stored ? String(stored.version) : 'none',
    },
  ]);
}
