import { fieldWords } from '../core/plan/field-words.ts';
import { inOrder } from '../core/plan/order-key.ts';
import type { Shoot, Spot } from '../core/plan/shoot.ts';

/** Something of a shoot that its owner may not want to hand on. */
export type SensitiveContent = {
  readonly spotId: string;
  readonly field: 'position' | NoteField;
  /** What it is and where: 'Pier head, parking note'. */
  readonly what: string;
  /** What would go along, plain text. */
  readonly text: string;
  /** How it can be left out: a note is emptied, a position is rounded to a hundredth of a degree, about a kilometre. */
  readonly leftOutBy: 'emptying' | 'rounding';
};

const NOTE_FIELDS = [
  'permissionNote',
  'parkingNote',
  'footTrafficNote',
  'windNote',
  'powerNote',
  'hazardsNote',
  'groundNote',
  'skylineOrigin',
] as const satisfies readonly (keyof Spot)[];

type NoteField = (typeof NOTE_FIELDS)[number];

/** Everything of the kind that goes along with a shoot, spot by spot: positions, notes, permission numbers. */
export const sensitiveContents = (shoot: Shoot): readonly SensitiveContent[] =>
  inOrder(shoot.spots).flatMap(([spotId, spot]) => [
    {
      spotId,
      field: 'position' as const,
      what: `${spot.name}, position`,
      text: `${spot.latitudeDeg}, ${spot.longitudeDeg}`,
      leftOutBy: 'rounding' as const,
    },
    ...NOTE_FIELDS.filter((field) => spot[field].trim() !== '').map((field) => ({
      spotId,
      field,
      what: fieldWords([shoot], ['spots', spotId, field]),
      text: spot[field],
      leftOutBy: 'emptying' as const,
    })),
  ]);

/** A copy of the shoot without the given contents. */
export const withoutContents = (
  shoot: Shoot,
  contents: readonly Pick<SensitiveContent, 'spotId' | 'field'>[],
): Shoot => ({
  ...shoot,
  spots: Object.fromEntries(
    Object.entries(shoot.spots).map(([id, spot]) => [
      id,
      contents
        .filter(({ spotId }) => spotId === id)
        .reduce<Spot>((left, { field }) => ({ ...left, ...emptied(spot, field) }), spot),
    ]),
  ),
});

const emptied = (spot: Spot, field: SensitiveContent['field']): Partial<Spot> =>
  field === 'position'
    ? { latitudeDeg: hundredth(spot.latitudeDeg), longitudeDeg: hundredth(spot.longitudeDeg) }
    : { [field]: '' };

const hundredth = (angleDeg: number): number => Math.round(angleDeg * 100) / 100;
