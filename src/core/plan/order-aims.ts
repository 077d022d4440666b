import type { OrderQuestion } from './order-day.ts';

export const mustHaves = ({ setups }: OrderQuestion): ReadonlySet<string> =>
  new Set(setups.flatMap(({ id, mustHave }) => (mustHave === true ? [id] : [])));
