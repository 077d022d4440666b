import type { SetupViewGap, SetupView } from '../../../core/plan/setup-view.ts';
import type { Fix, RecipeProblem } from '../../../core/strobe/recipe.ts';
import { evText, tenths } from '../../ui/figure-text.ts';

/** Why a setup does not work, by how many stops. */
export type ProblemText = { readonly headline: string; readonly why: string };

/** Direct sun on the face counts when it adds this much, stops. */
const SUN_COUNTS_STOPS = 0.1;

export function problemText(view: SetupView, problem: RecipeProblem): ProblemText {
  const short = tenths(problem.shortByStops);
  switch (problem.kind) {
    case 'sky-above-reach':
      return {
        headline: `Short by ${short}, the ${problem.role ?? 'light'} runs out first`,
        why: `The sky to hold stands at ${evText(view.referenceEv)}; at full power the lights reach ${evText(view.referenceEv - problem.shortByStops)}.`,
      };
    case 'ambient-lights-the-face':
      return ambientText(view, problem);
    case 'head-too-strong':
      return {
        headline: `Too strong by ${short}: the ${problem.role ?? 'light'} at its lowest power`,
        why: 'It would have to go below the lowest power its head has.',
      };
    case 'no-setting':
      return noSettingText(problem);
    case 'bad-input':
      return {
        headline: 'Nothing can be worked out from these figures',
        why: (problem.sentences ?? []).join(' '),
      };
  }
}

function ambientText(view: SetupView, problem: RecipeProblem): ProblemText {
  const wanted = view.setup.unlitUnderStops;
  const is = wanted - problem.shortByStops;
  const { ambientOutEv, ambientShadedEv } = view.light;
  const sun = !view.setup.shaded && ambientOutEv - ambientShadedEv > SUN_COUNTS_STOPS;
  const where = is >= 0 ? `${tenths(is)} under the key` : `${tenths(-is)} above the key`;
  return {
    headline: `${sun ? 'The sun' : 'Daylight'} lights the face: unlit it is ${where}, ${tenths(wanted)} under wanted`,
    why: 'With less between them the picture does not look lit.',
  };
}

function noSettingText(problem: RecipeProblem): ProblemText {
  const short = tenths(problem.shortByStops);
  const pins = pinCosts(problem.fixes);
  if (pins.length > 0)
    return {
      headline: `The pins do not go together: ${short} apart`,
      why: `${pins.map(({ name, costsStops }) => `The pin on ${name} costs ${tenths(costsStops)}.`).join(' ')} Unpin one.`,
    };
  switch (problem.limit) {
    case 'too-dark':
      return {
        headline: `Too dark by ${short}`,
        why: 'Slowest allowed shutter, widest aperture and highest ISO do not open far enough.',
      };
    case 'too-bright':
      return {
        headline: `Too bright by ${short}`,
        why: 'Fastest shutter, smallest aperture and the ND in the kit do not close far enough.',
      };
    default:
      return {
        headline: `No setting of the dials lands: ${short} is missing`,
        why: 'What the heads can give and what shutter, aperture, ISO and filters can make do not meet.',
      };
  }
}

const PIN_NAMES = {
  'unpin-shutter': 'the shutter',
  'unpin-aperture': 'the aperture',
  'unpin-iso': 'ISO',
  'unpin-nd': 'the filters',
  'unpin-power': 'the power',
} as const;

/** What each pin costs, of those whose going ends the shortage. */
export function pinCosts(
  fixes: readonly Fix[],
): readonly { readonly name: string; readonly costsStops: number }[] {
  return fixes.flatMap((fix) => {
    const { kind, role, value } = fix;
    if (!(kind in PIN_NAMES)) return [];
    const name = PIN_NAMES[kind as keyof typeof PIN_NAMES];
    return [{ name: role === undefined ? name : `${name} of the ${role}`, costsStops: value }];
  });
}

/** What is missing and what to do about it. */
export function gapText(gap: SetupViewGap): string {
  switch (gap.kind) {
    case 'gone':
      return 'The spot of this setup is no longer in the shoot. Choose another setup, or undo.';
    case 'not-in-kit':
      return `This setup uses a ${gap.what} (‘${gap.id}’) that is not in the kit. Choose another ${gap.what} below, or add it under Kit.`;
    case 'no-sky':
      return 'The frame shows no sky: nothing is there to hold. Tilt up, turn, or use a shorter lens.';
    case 'does-not-land':
      return `A recipe was found, but run forward it misses by ${tenths(gap.worstStops)}, so it is not shown. Move the minute or free a pin.`;
  }
}
