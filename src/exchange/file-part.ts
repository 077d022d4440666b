import type * as z from 'zod/mini';

import { checkDocument, describeFault, type DocumentFault } from '../core/plan/check-document.ts';
import {
  upgradeDocument,
  type UpgradeStep,
  type VersionProblem,
} from '../core/plan/shoot-upgrades.ts';
import type { Result } from '../core/units/result.ts';
import { refusal, type FileProblem } from './file-text.ts';

type Fields = Readonly<Record<string, unknown>>;

/** One document inside a file, upgraded and checked; faults are named with the part's name before their path. */
export function filePart<Schema extends z.ZodMiniType>(
  part: string,
  schema: Schema,
  value: unknown,
  steps: readonly UpgradeStep[],
): Result<z.output<Schema>, FileProblem> {
  if (!isFields(value))
    return faultsRefusal([{ path: part, expected: `a ${part}`, found: valueWords(value) }]);
  const upgraded = upgradedPart(part, value, steps);
  if (!upgraded.ok) return upgraded;
  const checked = checkDocument(schema, upgraded.value);
  if (checked.ok) return checked;
  return faultsRefusal(
    checked.problem.map((fault) => ({ ...fault, path: `${part}.${fault.path}` })),
  );
}

/** A part of any earlier version as this version has it, not yet checked. */
export function upgradedPart(
  part: string,
  value: Fields,
  steps: readonly UpgradeStep[],
): Result<Fields, FileProblem> {
  const upgraded = upgradeDocument(value, steps);
  return upgraded.ok ? upgraded : versionRefusal(part, upgraded.problem);
}

function versionRefusal(part: string, problem: VersionProblem): Result<never, FileProblem> {
  switch (problem.kind) {
    case 'newer':
      return refusal(
        'newer',
        `This shoot was made by a newer version: ${part} version ${problem.found}, this app reads up to ${problem.readsUpTo}.`,
      );
    case 'no-version':
      return faultsRefusal([
        {
          path: `${part}.version`,
          expected: 'a version number, 1 or above',
          found: valueWords(problem.found),
        },
      ]);
    case 'not-upgradable':
      return refusal(
        'faults',
        `${part}: expected what version ${problem.from} holds, as it says it is, found something else; it could not be brought to version ${problem.to}.`,
      );
  }
}

const FAULTS_NAMED = 5;

/** The first faults in words, and how many more there are. */
export const faultsRefusal = (faults: readonly DocumentFault[]): Result<never, FileProblem> => {
  const more = faults.length - FAULTS_NAMED;
  return refusal(
    'faults',
    ...faults.slice(0, FAULTS_NAMED).map((fault) => `${describeFault(fault)}.`),
    ...(more > 0 ? [`And ${more} more.`] : []),
  );
};

export const isFields = (value: unknown): value is Fields =>
  typeof value === 'object' && value !== null && !Array.isArray(value);

const valueWords = (value: unknown): string => {
  if (value === undefined) return 'nothing';
  if (Array.isArray(value)) return 'a list';
  return typeof value === 'object' && value !== null
    ? 'an object'
    : JSON.stringify(value).slice(0, 40);
};
