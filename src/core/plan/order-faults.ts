import {
  givenDrive,
  LONGEST_DAY_H,
  MOST_SETUPS,
  MS_PER_MIN,
  type OrderQuestion,
  type OrderSetup,
} from './order-day.ts';

export type TravelFault =
  /** No drive is known either way. */
  | { readonly kind: 'travel-missing'; readonly fromSpotId: string; readonly toSpotId: string }
  /** A drive is known the other way only. */
  | { readonly kind: 'travel-one-way'; readonly fromSpotId: string; readonly toSpotId: string }
  /** Found negative or no number, and so taken as not known. */
  | {
      readonly kind: 'travel-not-usable';
      readonly fromSpotId: string;
      readonly toSpotId: string;
      readonly found: number;
    }
  /** Longer than by way of another spot; taken as given. */
  | {
      readonly kind: 'travel-round-about';
      readonly fromSpotId: string;
      readonly toSpotId: string;
      readonly givenMin: number;
      readonly viaSpotId: string;
      readonly viaMin: number;
    };

export type SetupFault = {
  readonly kind: 'setup-not-usable';
  readonly id: string;
  readonly field: SetupField;
  readonly found: number;
};

export type SetupField =
  | 'buildMin'
  | 'shootMin'
  | 'strikeMin'
  | 'weight'
  | 'worth'
  | 'kitKg'
  | 'breakAfterMin';

/** What was found in a question that cannot be used, or not without saying so. */
export type OrderFault =
  | { readonly kind: 'day-not-usable'; readonly startMs: number; readonly endMs: number }
  | { readonly kind: 'too-many-setups'; readonly found: number }
  | { readonly kind: 'same-id'; readonly id: string }
  | {
      readonly kind: 'figure-not-usable';
      readonly field: 'slackShare' | 'crewCarryKg' | 'walkInMin' | 'sharedKitMin' | 'breaks';
      readonly name: string | null;
      readonly found: number;
    }
  | { readonly kind: 'carry-not-known'; readonly id: string; readonly kitKg: number }
  | { readonly kind: 'shared-kit-not-timed'; readonly piece: string }
  | SetupFault
  | TravelFault;

/** Faults with which no order can be made at all. */
export const STOPS_THE_DAY: readonly OrderFault['kind'][] = [
  'day-not-usable',
  'too-many-setups',
  'same-id',
  'figure-not-usable',
];

export const orderFaults = (question: OrderQuestion): readonly OrderFault[] => [
  ...dayFaults(question),
  ...figureFaults(question),
  ...question.setups.flatMap((setup) => setupFaults(setup)),
  ...kitFaults(question),
  ...(question.setups.length > MOST_SETUPS ? [] : travelFaults(question)),
];

function dayFaults({ startMs, endMs, setups }: OrderQuestion): readonly OrderFault[] {
  const hours = (endMs - startMs) / (60 * MS_PER_MIN);
  const ids = setups.map(({ id }) => id);
  return [
    ...(hours > 0 && hours <= LONGEST_DAY_H
      ? []
      : [{ kind: 'day-not-usable', startMs, endMs } as const]),
    ...(ids.length > MOST_SETUPS ? [{ kind: 'too-many-setups', found: ids.length } as const] : []),
    ...new Set(ids.filter((id, at) => ids.indexOf(id) !== at)),
  ].map((fault) => (typeof fault === 'string' ? { kind: 'same-id', id: fault } : fault));
}

type Figure = Extract<OrderFault, { readonly kind: 'figure-not-usable' }>;

function figureFaults(question: OrderQuestion): readonly Figure[] {
  const { slackShare = 0, crewCarryKg = 1, walkInMin = {}, sharedKitMin = {} } = question;
  const figure = (field: Figure['field'], found: number, name: string | null = null): Figure => ({
    kind: 'figure-not-usable',
    field,
    name,
    found,
  });
  const minutes = Object.entries({ walkInMin, sharedKitMin } as const).flatMap(([field, given]) =>
    Object.entries(given).map(([name, found]) => figure(field as Figure['field'], found, name)),
  );
  const breaks = (question.breaks ?? []).map(({ startMs, endMs }) =>
    figure('breaks', (endMs - startMs) / MS_PER_MIN),
  );
  const all = [
    figure('slackShare', slackShare),
    figure('crewCarryKg', crewCarryKg),
    ...minutes,
    ...breaks,
  ];
  return all.filter(
    ({ field, found }) => !isAmount(found) || (field === 'crewCarryKg' && found === 0),
  );
}

/** The first figure of a setup that cannot be used; none where all can. */
export function setupFaults(setup: OrderSetup): readonly SetupFault[] {
  const fault = (field: SetupField, found: number, usable: boolean): readonly SetupFault[] =>
    usable ? [] : [{ kind: 'setup-not-usable', id: setup.id, field, found }];
  const { buildMin, shootMin, strikeMin, weight, kitKg = 0, breakAfterMin = 0 } = setup;
  const strange = setup.worth.find((worth) => Number.isNaN(worth) || worth === Infinity);
  return [
    ...fault('shootMin', shootMin, isAmount(shootMin) && shootMin > 0),
    ...fault('buildMin', buildMin, isAmount(buildMin)),
    ...fault('strikeMin', strikeMin, isAmount(strikeMin)),
    ...fault('weight', weight, isAmount(weight)),
    ...fault('kitKg', kitKg, isAmount(kitKg)),
    ...fault('breakAfterMin', breakAfterMin, isAmount(breakAfterMin)),
    ...fault('worth', strange ?? 0, strange === undefined),
  ].slice(0, 1);
}

const isAmount = (found: number): boolean => Number.isFinite(found) && found >= 0;

function kitFaults({ setups, crewCarryKg, walkInMin, sharedKitMin = {} }: OrderQuestion) {
  const pieces = setups.flatMap(({ sharedKit }) => [...new Set(sharedKit)]);
  const shared = new Set(pieces.filter((piece, at) => pieces.indexOf(piece) !== at));
  return [
    ...setups.flatMap(({ id, spotId, kitKg = 0 }): readonly OrderFault[] =>
      kitKg > 0 && crewCarryKg === undefined && (walkInMin?.[spotId] ?? 0) > 0
        ? [{ kind: 'carry-not-known', id, kitKg }]
        : [],
    ),
    ...[...shared].flatMap((piece): readonly OrderFault[] =>
      sharedKitMin[piece] === undefined ? [{ kind: 'shared-kit-not-timed', piece }] : [],
    ),
  ];
}

function travelFaults({ setups, travelMin, baseSpotId }: OrderQuestion): readonly TravelFault[] {
  const spots = [...new Set(setups.map(({ spotId }) => spotId))];
  const given = (from: string, to: string): number | null =>
    givenDrive(travelMin, from, to) ?? null;
  const usable = (from: string, to: string): number | null => {
    const minutes = from === to ? (given(from, to) ?? 0) : given(from, to);
    return minutes !== null && isAmount(minutes) ? minutes : null;
  };
  const faultsOf = (from: string, to: string, wayBack: boolean): readonly TravelFault[] => {
    const way = { fromSpotId: from, toSpotId: to };
    const found = given(from, to);
    if (found !== null && !isAmount(found)) return [{ kind: 'travel-not-usable', ...way, found }];
    const givenMin = usable(from, to);
    if (from === to) return [];
    if (givenMin !== null) return roundAbout(spots, usable, { ...way, givenMin });
    if (wayBack && usable(to, from) !== null) return [{ kind: 'travel-one-way', ...way }];
    return !wayBack || from < to || given(to, from) !== null
      ? [{ kind: 'travel-missing', ...way }]
      : [];
  };
  return [
    ...(baseSpotId === undefined ? [] : spots.flatMap((to) => faultsOf(baseSpotId, to, false))),
    ...spots.flatMap((from) => spots.flatMap((to) => faultsOf(from, to, true))),
  ];
}

function roundAbout(
  spots: readonly string[],
  usable: (from: string, to: string) => number | null,
  way: { readonly fromSpotId: string; readonly toSpotId: string; readonly givenMin: number },
): readonly TravelFault[] {
  let shortest: TravelFault | null = null;
  let shortestMin = way.givenMin;
  for (const viaSpotId of spots) {
    if (viaSpotId === way.fromSpotId || viaSpotId === way.toSpotId) continue;
    const there = usable(way.fromSpotId, viaSpotId);
    const on = usable(viaSpotId, way.toSpotId);
    if (there === null || on === null || there + on >= shortestMin) continue;
    shortestMin = there + on;
    shortest = { kind: 'travel-round-about', ...way, viaSpotId, viaMin: shortestMin };
  }
  return shortest === null ? [] : [shortest];
}
