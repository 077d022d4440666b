import { inOrder } from '../../../../core/plan/order-key.ts';
import type { Spot } from '../../../../core/plan/shoot.ts';
import { FOOT_TRAFFIC_WORDS, PERMISSION_WORDS, SHELTER_WORDS } from './site-words.ts';

/** What is noted about the ground and the way in, without what is empty. */
export function siteLines(spot: Spot): readonly (readonly [name: string, text: string])[] {
  const reflects = `reflects ${percent(spot.groundReflectance)}`;
  const checks = inOrder(spot.checklist);
  const open = checks.filter(([, { done }]) => !done);
  const lines: (readonly [string, string])[] = [
    ['Ground', joined(spot.groundNote, reflects)],
    [
      'Surfaces',
      inOrder(spot.surfaces)
        .map(([, { name, kind, reflectance, note }]) =>
          joined(`${name} (${kind}) ${percent(reflectance)}`, note),
        )
        .join('; '),
    ],
    ['Way in', joined(spot.parkingNote, `${spot.walkInMin} min on foot`, spot.accessNote)],
    [
      'Permission',
      joined(
        PERMISSION_WORDS[spot.permission],
        spot.permissionNote,
        spot.permissionNumber === '' ? '' : `number ${spot.permissionNumber}`,
        span(spot.permissionFrom, spot.permissionUntil),
        spot.permissionConditions,
      ),
    ],
    [
      'Foot traffic',
      joined(
        spot.footTraffic === 'unknown' ? '' : FOOT_TRAFFIC_WORDS[spot.footTraffic],
        spot.footTrafficNote,
      ),
    ],
    [
      'Shelter',
      joined(spot.shelter === 'unknown' ? '' : SHELTER_WORDS[spot.shelter], spot.shelterNote),
    ],
    ['Wind', spot.windNote],
    ['Power', spot.powerNote],
    ['Toilets', spot.toiletsNote],
    [
      'Contacts',
      inOrder(spot.contacts)
        .map(([, contact]) => joined(contact.role, contact.note))
        .join('; '),
    ],
    [
      'Scouting list',
      checks.length === 0
        ? ''
        : joined(
            `${checks.length - open.length} of ${checks.length} done`,
            open[0] === undefined ? '' : `next: ${open[0][1].text}`,
          ),
    ],
  ];
  return lines.filter(([, text]) => text !== '');
}

const percent = (share: number): string => `${Math.round(share * 100)} %`;

const span = (from: string, until: string): string =>
  joined(from === '' ? '' : `from ${from}`, until === '' ? '' : `until ${until}`);

const joined = (...parts: readonly string[]): string =>
  parts.filter((part) => part !== '').join(', ');
