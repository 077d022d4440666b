import { useMemo, type ReactNode } from 'react';

import type { SetupCaseInput } from '../../../core/plan/setup-case.ts';
import { fixEdit } from '../../../core/plan/setup-fix.ts';
import type { SetupSource } from '../../../core/plan/setup-source.ts';
import type { SetupView } from '../../../core/plan/setup-view.ts';
import { inWind } from '../../../core/plan/stand-in-wind.ts';
import { windVersions, type WindVersion } from '../../../core/plan/wind-versions.ts';
import { useEditShoot } from '../../state/documents.tsx';
import { inHandText } from '../../ui/figure-text.ts';
import { ROLE_NAMES } from '../../ui/recipe-text.ts';
import { fixText } from './fix-text.ts';
import { windText } from './light-words.ts';
import { problemText } from './problem-text.ts';

type Known = { readonly asked: SetupCaseInput; readonly view: SetupView };
type WindBlockProps = Known & { readonly source: SetupSource };

/** A stand that is not put up in this wind, and how the light can be had all the same. */
export function WindBlock({ asked, view, source }: WindBlockProps): ReactNode {
  const { lightId, light, carrier } = source;
  const versions = useMemo(() => windVersions(asked, view, lightId), [asked, view, lightId]);
  return (
    <div className="short-by" data-blocked={lightId}>
      <p className="figure-line">
        <strong data-figure={`blocked-${lightId}`}>
          {ROLE_NAMES[light.role]} blocked by the wind
        </strong>
      </p>
      <p className="quiet">
        {carrier?.name}: {windText(inWind(source, view.setup.gustMS))}.
      </p>
      <ul className="fixes">
        {versions.map((version) => (
          <Version
            key={JSON.stringify(version.changes)}
            version={version}
            asked={asked}
            view={view}
          />
        ))}
      </ul>
    </div>
  );
}

type VersionProps = Known & { readonly version: WindVersion };

function Version({ version, asked, view }: VersionProps): ReactNode {
  const edit = useEditShoot();
  const { sentence } = fixText(version, { base: view, kit: asked.kit });
  const made = fixEdit(asked.setupId, version);
  const { problem } = version;
  const outcome =
    problem === null
      ? inHandText(version.inHandStops)
      : `then ${problemText(view, { ...problem, fixes: [] }).headline}`;
  return (
    <li data-wind-version>
      <p>
        {sentence}: <b>{outcome}</b>
      </p>
      <button
        type="button"
        aria-label={`Use this: ${sentence}`}
        disabled={made === null}
        onClick={() => made !== null && edit(sentence, made)}
      >
        Use this
      </button>
    </li>
  );
}
