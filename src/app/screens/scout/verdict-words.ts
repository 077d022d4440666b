import type { Verdict } from '../../../core/plan/setup-column.ts';

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
