import type { SetupViewGap } from '../../core/plan/setup-view.ts';
import type { Verdict } from '../../core/plan/verdicts.ts';
import type { RecipeProblem } from '../../core/strobe/recipe.ts';
import { tenths } from './figure-text.ts';

type Broken = {
  readonly verdict: Verdict;
  readonly shortByStops: number;
  /** The role that runs out first, or is too strong. */
  readonly role: string | null;
};

/** 'short by 0.8, fill runs out first': how a minute that does not work falls short. */
export function brokenText({ verdict, shortByStops, role }: Broken): string {
  const short = `short by ${tenths(shortByStops)}`;
  switch (verdict) {
    case 'works':
      return 'works';
    case 'sky-above-reach':
      return role === null ? `${short}, out of reach` : `${short}, ${role} runs out first`;
    case 'ambient-lights-the-face':
      return `ambient lights the face, ${tenths(shortByStops)} too much`;
    case 'head-too-strong':
      return `too dark: ${role ?? 'a head'} at lowest power is ${tenths(shortByStops)} too strong`;
    case 'too-dark':
      return `too dark for the camera by ${tenths(shortByStops)}`;
    case 'too-bright':
      return `too bright for dials and ND by ${tenths(shortByStops)}`;
    case 'no-sky':
      return 'no sky in this frame';
    case 'not-asked':
      return 'names something that is not in the kit';
  }
}

export function problemText(problem: RecipeProblem): string {
  const { shortByStops, role } = problem;
  switch (problem.kind) {
    case 'bad-input':
      return problem.sentences?.join(' ') ?? 'a value of the setup cannot be used';
    case 'no-setting':
      return problem.limit === 'between'
        ? `no dial setting lands closer than ${tenths(shortByStops)}`
        : brokenText({ verdict: problem.limit ?? 'too-dark', shortByStops, role: null });
    case 'sky-above-reach':
    case 'ambient-lights-the-face':
    case 'head-too-strong':
      return brokenText({ verdict: problem.kind, shortByStops, role: role ?? null });
  }
}

export function gapText(gap: SetupViewGap): string {
  switch (gap.kind) {
    case 'gone':
      return 'this setup was removed';
    case 'not-in-kit':
      return `its ${gap.what} is not in the kit`;
    case 'no-sky':
      return 'no sky in this frame: skyline or ground fills it';
    case 'does-not-land':
      return `the recipe found misses by ${tenths(gap.worstStops)} when run forward, so it is not shown`;
  }
}

/** What stands in the way, as the rest of a sentence that names a minute. */
export function verdictWords(verdict: Verdict): string {
  switch (verdict) {
    case 'works':
      return 'the lights hold the sky';
    case 'sky-above-reach':
      return 'the sky is brighter than the lights reach';
    case 'ambient-lights-the-face':
      return 'ambient lights the face too much for it to look lit';
    case 'head-too-strong':
      return 'a head would have to go below its lowest power';
    case 'too-dark':
      return 'too dark for slowest shutter, widest aperture and highest ISO';
    case 'too-bright':
      return 'too bright for the shutters, apertures and ND in the kit';
    case 'no-sky':
      return 'the frame shows no sky';
    case 'not-asked':
      return 'the setup names something that is not in the kit';
  }
}
