import { minutesText, orderFaultSentence, type OrderNames } from './order-words.ts';
import type { Break } from './what-breaks.ts';

/** What breaks, as a sentence that can stand on the setup's block. */
export function breakSentence(broken: Break, names: OrderNames): string {
  switch (broken.kind) {
    case 'collision':
      return `Starts ${minutesText(broken.byMin)} before the last frame of ${names.setup(broken.beforeId)}.`;
    case 'move-too-short':
      return `The move from ${names.setup(broken.beforeId)} takes ${minutesText(broken.needMin)}, ${minutesText(broken.haveMin)} are left: ${minutesText(broken.byMin)} short.`;
    case 'travel-missing':
      return `Travel time missing from ${names.spot(broken.fromSpotId)} to ${names.spot(broken.toSpotId)}.`;
    case 'before-built':
      return `Starts ${minutesText(broken.byMin)} before it can be built.`;
    case 'need':
      return needText(broken.nearestMin);
    case 'in-a-break':
      return `A break takes ${minutesText(broken.byMin)} of it.`;
    case 'past-wrap':
      return `Back in the car ${minutesText(broken.byMin)} after the latest wrap.`;
    case 'must-have-left':
      return `${names.setup(broken.id)} is a must-have and not placed.`;
    case 'placed-twice':
      return `${names.setup(broken.id)} is placed twice.`;
    case 'not-in-the-day':
      return `${names.setup(broken.id)}: found no such setup with a start in this day.`;
    case 'setup-not-usable':
    case 'day-not-usable':
    case 'figure-not-usable':
    case 'too-many-setups':
    case 'same-id':
      return orderFaultSentence(broken, names);
  }
}

function needText(nearestMin: number | null): string {
  if (nearestMin === null) return 'Its needs allow no start in the day.';
  const off = minutesText(Math.abs(nearestMin));
  return `Its needs do not allow this start; the nearest they allow is ${off} ${nearestMin > 0 ? 'later' : 'earlier'}.`;
}
