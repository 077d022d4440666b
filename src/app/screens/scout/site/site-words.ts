import type { Permission } from '../../../../core/plan/spot-schema.ts';
import type { Spot } from '../../../../core/plan/shoot.ts';

/** None of them says that no permission is needed: that is not for a note to say. */
export const PERMISSION_WORDS: Readonly<Record<Permission, string>> = {
  unknown: 'not asked yet',
  asked: 'asked, no answer yet',
  granted: 'granted',
  refused: 'refused',
};

export const FOOT_TRAFFIC_WORDS: Readonly<Record<Spot['footTraffic'], string>> = {
  unknown: 'not known',
  quiet: 'quiet',
  some: 'some',
  busy: 'busy',
};

export const SHELTER_WORDS: Readonly<Record<Spot['shelter'], string>> = {
  unknown: 'not known',
  none: 'none',
  partial: 'from rain or from wind',
  full: 'from rain and wind',
};

type Hazard = keyof Spot['hazards'];

export const HAZARD_WORDS: Readonly<
  Record<Hazard, { readonly name: string; readonly caution: string }>
> = {
  water: {
    name: 'Water',
    caution: 'Water’s edge and wet stone: nobody steps back without a spotter.',
  },
  traffic: {
    name: 'Traffic',
    caution:
      'Traffic close by: no stand and no person on a carriageway or on railway land, no flash toward drivers.',
  },
  height: {
    name: 'Height',
    caution: 'A drop close by: mark a line well back from the edge; nobody crosses it to frame.',
  },
  lonely: {
    name: 'Lonely or without signal',
    caution:
      'Nobody alone here after dark; someone elsewhere knows the plan and the hour of return.',
  },
};

/** Where a permission does not cover the date, in words; null where it does or nothing is noted. */
export function permissionGap(
  spot: Pick<Spot, 'permission' | 'permissionFrom' | 'permissionUntil'>,
  date: string,
): string | null {
  if (spot.permission !== 'granted') return null;
  const { permissionFrom: from, permissionUntil: until } = spot;
  if (from !== '' && date < from) return `granted only from ${from}: not yet on ${date}`;
  if (until !== '' && date > until) return `granted only until ${until}: no longer on ${date}`;
  return null;
}
