import { together, type Edit } from '../core/plan/edits.ts';
import { fieldWords } from '../core/plan/field-words.ts';
import { applyEdit } from '../core/plan/history.ts';
import { inOrder } from '../core/plan/order-key.ts';
import type { Shoot, Spot } from '../core/plan/shoot.ts';
import type { SensitiveContent, SpotContent } from './sensitive-content.ts';
import { sensitivePhotos } from './sensitive-photos.ts';

const NOTE_FIELDS = [
  'accessNote',
  'parkingNote',
  'toiletsNote',
  'permissionNote',
  'permissionNumber',
  'permissionConditions',
  'footTrafficNote',
  'shelterNote',
  'windNote',
  'powerNote',
  'hazardsNote',
  'groundNote',
  'skylineOrigin',
] as const satisfies readonly (keyof Spot)[];

/** Everything of the kind that goes along with a shoot, spot by spot, then what is drawn on the map. */
export const sensitiveContents = (shoot: Shoot): readonly SensitiveContent[] => [
  ...inOrder(shoot.spots).flatMap(([spotId, spot]) =>
    [positionOf(spot), ...notesOf(spot), ...peopleAndChecks(spot), ...sensitivePhotos(spot)].map(
      ({ leaveOut, path, ...content }) => ({
        what: fieldWords([shoot], ['spots', spotId, ...path]),
        ...content,
        spotId,
        field: path.join('.'),
        leaveOut: (draft: Shoot): void => {
          const own = draft.spots[spotId];
          if (own !== undefined) leaveOut(own);
        },
      }),
    ),
  ),
  ...drawnOnTheMap(shoot),
];

/** A copy of the shoot without the given contents. */
export const withoutContents = (shoot: Shoot, contents: readonly SensitiveContent[]): Shoot =>
  applyEdit(shoot, together(...contents.map(({ leaveOut }) => leaveOut))).document;

const positionOf = (spot: Spot): SpotContent => ({
  path: ['position'],
  text: `${spot.latitudeDeg}, ${spot.longitudeDeg}`,
  leftOutBy: 'rounding',
  onlyIfAsked: false,
  leaveOut: (own) => {
    for (const place of [own, own.terrain])
      if (place !== null) {
        place.latitudeDeg = hundredth(place.latitudeDeg);
        place.longitudeDeg = hundredth(place.longitudeDeg);
      }
  },
});

const notesOf = (spot: Spot): readonly SpotContent[] =>
  [
    ...NOTE_FIELDS.map((field) =>
      noted([field], spot[field], (own) => {
        own[field] = '';
      }),
    ),
    noted(['terrain', 'origin'], spot.terrain?.origin ?? '', ({ terrain }) => {
      if (terrain !== null) terrain.origin = '';
    }),
    ...inOrder(spot.surfaces).map(([id, { note }]) =>
      noted(['surfaces', id, 'note'], note, ({ surfaces }) => {
        if (surfaces[id] !== undefined) surfaces[id].note = '';
      }),
    ),
    ...inOrder(spot.readings).map(([id, { note }]) =>
      noted(['readings', id, 'note'], note, ({ readings }) => {
        if (readings[id] !== undefined) readings[id].note = '';
      }),
    ),
  ].filter(({ text }) => text.trim() !== '');

const noted = (path: readonly string[], text: string, leaveOut: Edit<Spot>): SpotContent => ({
  path,
  text,
  leftOutBy: 'emptying',
  onlyIfAsked: false,
  leaveOut,
});

const peopleAndChecks = (spot: Spot): readonly SpotContent[] => [
  ...inOrder(spot.contacts).map(([id, { role, note }]) => ({
    path: ['contacts', id],
    text: [role, note].filter((part) => part !== '').join(': '),
    leftOutBy: 'removing' as const,
    onlyIfAsked: false,
    leaveOut: ({ contacts }: Spot) => void delete contacts[id],
  })),
  ...inOrder(spot.checklist).map(([id, { text }]) => ({
    path: ['checklist', id],
    what: `${spot.name}, checklist`,
    text,
    leftOutBy: 'removing' as const,
    onlyIfAsked: false,
    leaveOut: ({ checklist }: Spot) => void delete checklist[id],
  })),
];

/** What stands on the map tells the place as well as a position does. */
const drawnOnTheMap = (shoot: Shoot): readonly SensitiveContent[] => [
  ...inOrder(shoot.obstacles).map(([id, { name, outline, origin }]) => ({
    spotId: null,
    field: `obstacles.${id}`,
    what: `${name}, on the map`,
    text: `an outline of ${outline.length} corners${origin === '' ? '' : `, ${origin}`}`,
    leftOutBy: 'removing' as const,
    onlyIfAsked: false,
    leaveOut: ({ obstacles }: Shoot) => void delete obstacles[id],
  })),
  ...inOrder(shoot.outlineSets).map(([id, { name, outlineCount, origin }]) => ({
    spotId: null,
    field: `outlineSets.${id}`,
    what: `${name}, on the map`,
    text: `${outlineCount} outlines${origin === '' ? '' : `, ${origin}`}`,
    leftOutBy: 'removing' as const,
    onlyIfAsked: false,
    leaveOut: ({ outlineSets }: Shoot) => void delete outlineSets[id],
  })),
];

const hundredth = (angleDeg: number): number => Math.round(angleDeg * 100) / 100;
