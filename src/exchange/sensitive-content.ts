import type { Edit } from '../core/plan/edits.ts';
import type { Shoot, Spot } from '../core/plan/shoot.ts';

/** Something of a shoot that its owner may not want to hand on. */
export type SensitiveContent = {
  /** null: of the shoot as a whole. */
  readonly spotId: string | null;
  /** Which of its spot or shoot: 'position', 'parkingNote', 'photos.k3f.note'. */
  readonly field: string;
  /** What it is and where: 'Pier head, parking note'. */
  readonly what: string;
  /** What would go along, plain text. */
  readonly text: string;
  /** How it can be left out: a note is emptied, a position is rounded to a hundredth of a degree, about a kilometre. */
  readonly leftOutBy: 'emptying' | 'rounding' | 'removing';
  /** Left out unless it is asked for. */
  readonly onlyIfAsked: boolean;
  readonly leaveOut: Edit<Shoot>;
};

/** Of one spot; `what` where the words of its path would not do. */
export type SpotContent = Pick<SensitiveContent, 'text' | 'leftOutBy' | 'onlyIfAsked'> & {
  readonly path: readonly string[];
  readonly what?: string;
  readonly leaveOut: Edit<Spot>;
};
