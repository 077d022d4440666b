import { checkDocument, type DocumentFault } from '../core/plan/check-document.ts';
import type { DocumentKind } from '../core/plan/history-entry.ts';
import { KIT } from '../core/plan/kit.ts';
import { missingSpotFaults } from '../core/plan/references.ts';
import { KIT_STEPS, SHOOT_STEPS, upgradeDocument } from '../core/plan/shoot-upgrades.ts';
import { SHOOT } from '../core/plan/shoot.ts';
import { fail, type Result } from '../core/units/result.ts';
import type { DocumentOf } from './shoot-repository.ts';

type Checked<Document> = Result<Document, readonly DocumentFault[]>;

const CHECKS: {
  readonly [Kind in DocumentKind]: (value: unknown) => Checked<DocumentOf<Kind>>;
} = {
  kit: (value) => checkDocument(KIT, value),
  shoot: (value) => {
    const checked = checkDocument(SHOOT, value);
    if (!checked.ok) return checked;
    const missing = missingSpotFaults(checked.value);
    return missing.length > 0 ? fail(missing) : checked;
  },
};

/** What may be written: schema kept, every setup's spot there. */
export const checkedDocument = <Kind extends DocumentKind>(
  kind: Kind,
  value: unknown,
): Checked<DocumentOf<Kind>> => CHECKS[kind](value);

/** What was written by this version or an earlier one, as this version has it. */
export function openedDocument<Kind extends DocumentKind>(
  kind: Kind,
  stored: object,
): Checked<DocumentOf<Kind>> {
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
