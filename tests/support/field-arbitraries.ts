import fc from 'fast-check';

export const record = <Fields extends object>(fields: {
  [Key in keyof Fields]: fc.Arbitrary<Fields[Key]>;
}): fc.Arbitrary<Fields> => fc.record<Fields>(fields, { noNullPrototype: true });

/** −0 is left out: JSON has only one zero. */
export const number = (min: number, max: number): fc.Arbitrary<number> =>
  fc.double({ min, max, noNaN: true }).map((value) => (value === 0 ? 0 : value));
export const positive = (max: number): fc.Arbitrary<number> =>
  fc.double({ min: 0, minExcluded: true, max, noNaN: true });
export const angle = fc
  .double({ min: 0, max: 360, maxExcluded: true, noNaN: true })
  .map((value) => value || 0);
export const whole = (min: number, max: number): fc.Arbitrary<number> => fc.integer({ min, max });
export const orNull = <Value>(value: fc.Arbitrary<Value>): fc.Arbitrary<Value | null> =>
  fc.option(value, { nil: null });

export const characters = (letters: string, maxLength: number): fc.Arbitrary<string> =>
  fc.string({ unit: fc.constantFrom(...letters.split('')), minLength: 1, maxLength });
export const id = characters('abzAZ019_-', 6).filter((text) => !(text in Object.prototype));
export const order = characters('abmz', 5);
export const name = fc.string({ unit: 'binary', minLength: 1, maxLength: 12 });
export const text = fc.oneof(
  fc.string({ unit: 'binary', maxLength: 12 }),
  fc.constantFrom('', '<img src=x onerror=alert(1)>', 'Zeile eins\nZeile zwei', '"\\\u2028\ud800'),
);
export const mapOf = <Entry>(
  entry: fc.Arbitrary<Entry>,
  maxKeys = 3,
): fc.Arbitrary<Record<string, Entry>> =>
  fc.dictionary(id, entry, { maxKeys, noNullPrototype: true });
export const filled = <Entry>(entry: fc.Arbitrary<Entry>): fc.Arbitrary<Record<string, Entry>> =>
  fc.dictionary(id, entry, { minKeys: 1, maxKeys: 3, noNullPrototype: true });

export const dateOrNone = fc.constantFrom('', '2027-05-14', '2028-02-29');
