import { LONGEST_DAY_H, MOST_SETUPS, MS_PER_MIN } from './order-day.ts';
import type { OrderFault, SetupField } from './order-faults.ts';
import type { LeftBecause, OthersFirst } from './order-left.ts';

/** How setups and spots are called, by their ids. */
export type OrderNames = {
  readonly setup: (id: string) => string;
  readonly spot: (id: string) => string;
};

/** Why a setup is not in the order, as the end of ‘Not placed: …’. */
export function leftSentence(because: LeftBecause, names: OrderNames): string {
  switch (because.kind) {
    case 'day-not-usable':
      return 'the day itself cannot be used.';
    case 'not-usable':
      return `${fieldText(because)}.`;
    case 'no-allowed-start':
      return 'no allowed start in the day.';
    case 'ends-before-built':
      return `its window ends ${minutesText(because.byMin)} before it can be built.`;
    case 'past-wrap':
      return `at its first allowed start it would be back in the car ${minutesText(because.byMin)} after the latest wrap.`;
    case 'in-a-break':
      return `a break takes ${minutesText(because.byMin)} of it at its best start.`;
    case 'travel-missing':
      return `travel time missing from ${names.spot(because.fromSpotId)} to ${names.spot(because.toSpotId)}.`;
    case 'brings-nothing':
      return `its best start is worth ${worthText(because.bestWorth)}; expected more than 0.`;
    case 'takes-moves':
      return `it takes ${because.moves} more ${because.moves === 1 ? 'move' : 'moves'}.`;
    case 'others-first':
      return othersText(because, names);
  }
}

function othersText(because: OthersFirst, names: OrderNames): string {
  const { othersWorth, ownWorth, insteadOf, mustHavesOut, shortByMin } = because;
  const list = (ids: readonly string[]): string => ids.map(names.setup).join(', ');
  const fit =
    shortByMin > 0 && shortByMin < Infinity
      ? ` It is ${minutesText(shortByMin)} too long to go between the others.`
      : '';
  if (mustHavesOut.length > 0)
    return `left for must-haves that would fall out: ${list(mustHavesOut)}.${fit}`;
  const against =
    insteadOf.length > 0
      ? ` (${list(insteadOf)})`
      : ', which would have to leave their best starts';
  const [others, own] = [worthText(othersWorth), worthText(ownWorth)];
  if (others === own)
    return `left for others worth as much${against}: ${others} against ${own}, and over earlier.${fit}`;
  return othersWorth > ownWorth
    ? `left for others worth more${against}: ${others} against ${own}.${fit}`
    : `left for others that are wanted first${against}: ${others} against ${own}.${fit}`;
}

const SETUP_FIELDS: Readonly<Record<SetupField, string>> = {
  buildMin: 'build: found % min, expected 0 or more',
  shootMin: 'duration: found % min, expected more than 0',
  strikeMin: 'strike: found % min, expected 0 or more',
  weight: 'weight: found %, expected 0 or more',
  worth: 'worth: found % among its starts, expected numbers, or −∞ where it is not allowed',
  kitKg: 'kit: found % kg, expected 0 or more',
  breakAfterMin: 'break after it: found % min, expected 0 or more',
};

const fieldText = ({
  field,
  found,
}: {
  readonly field: SetupField;
  readonly found: number;
}): string => SETUP_FIELDS[field].replace('%', numberText(found));

const DAY_FIGURES = {
  slackShare: 'Slack: found % as the share, expected 0 or more.',
  crewCarryKg: 'What the crew carries in one trip: found % kg, expected more than 0.',
  walkInMin: 'Walk-in to $: found % min, expected 0 or more.',
  sharedKitMin: 'Taking over $: found % min, expected 0 or more.',
  breaks: 'Break: found one of % min, expected 0 or more.',
} as const;

/** What is wrong with a question, and what was made of it. */
export function orderFaultSentence(fault: OrderFault, names: OrderNames): string {
  switch (fault.kind) {
    case 'day-not-usable': {
      const hours = (fault.endMs - fault.startMs) / (60 * MS_PER_MIN);
      return `Day: found ${numberText(Math.round(100 * hours) / 100)} h from start to latest wrap, expected more than 0 and at most ${LONGEST_DAY_H} h.`;
    }
    case 'too-many-setups':
      return `Setups: found ${fault.found}, expected at most ${MOST_SETUPS} in one day.`;
    case 'same-id':
      return `Setups: found ${names.setup(fault.id)} twice, expected each once.`;
    case 'figure-not-usable':
      return DAY_FIGURES[fault.field]
        .replace('%', numberText(fault.found))
        .replace('$', () =>
          fault.field === 'walkInMin' ? names.spot(fault.name ?? '') : (fault.name ?? ''),
        );
    case 'carry-not-known':
      return `${names.setup(fault.id)}: ${numberText(fault.kitKg)} kg to carry in and nothing said of what the crew carries; one trip is reckoned.`;
    case 'shared-kit-not-timed':
      return `${fault.piece}: used by several setups and no time given for taking it over; 0 min is reckoned.`;
    case 'setup-not-usable':
      return `${names.setup(fault.id)}: ${fieldText(fault)}; it is left out.`;
    case 'travel-missing':
    case 'travel-one-way':
    case 'travel-not-usable':
    case 'travel-round-about':
      return travelText(
        fault,
        `${names.spot(fault.fromSpotId)} to ${names.spot(fault.toSpotId)}`,
        names,
      );
  }
}

function travelText(
  fault: Extract<OrderFault, { readonly kind: `travel-${string}` }>,
  way: string,
  names: OrderNames,
): string {
  switch (fault.kind) {
    case 'travel-missing':
      return `Travel time missing from ${way}: no order goes that way.`;
    case 'travel-one-way':
      return `Travel time missing from ${way}: only the way back has one; no order goes that way.`;
    case 'travel-not-usable':
      return `Travel from ${way}: found ${numberText(fault.found)} min, expected 0 or more; no order goes that way.`;
    case 'travel-round-about':
      return `Travel from ${way}: found ${numberText(fault.givenMin)} min, but by way of ${names.spot(fault.viaSpotId)} it is ${numberText(fault.viaMin)} min; taken as given.`;
  }
}

export const minutesText = (minutes: number): string =>
  `${numberText(Math.ceil(minutes - 1e-6))} min`;

const worthText = (worth: number): string => numberText(Math.round(100 * worth) / 100);

const numberText = (found: number): string =>
  Number.isNaN(found) ? 'no number' : String(found).replace('-', '−').replace('Infinity', '∞');
