import type { Spot } from '../../../core/plan/shoot.ts';
import type { Permission } from '../../../core/plan/spot-schema.ts';

export const PERMISSION_WORDS: Readonly<Record<Permission, string>> = {
  unknown: 'not asked yet',
  asked: 'asked, no answer yet',
  granted: 'granted',
  refused: 'refused',
};

/** What is noted about the ground and the way in, without what is empty. */
export function groundLines(spot: Spot): readonly (readonly [name: string, text: string])[] {
  const reflects = `reflects ${Math.round(spot.groundReflectance * 100)} %`;
  const lines: (readonly [string, string])[] = [
    ['Ground', joined(spot.groundNote, reflects)],
    ['Way in', joined(spot.parkingNote, `${spot.walkInMin} min on foot`)],
    ['Permission', joined(PERMISSION_WORDS[spot.permission], spot.permissionNote)],
    ['Foot traffic', spot.footTrafficNote],
    ['Wind', spot.windNote],
    ['Power', spot.powerNote],
  ];
  return lines.filter(([, text]) => text !== '');
}

const joined = (first: string, second: string): string =>
  [first, second].filter((part) => part !== '').join(', ');
