const FOOT_M = 0.3048;

const METRES = /^(\d+(?:[.,]\d+)?)\s*(?:m|metres?|meters?)?$/i;
const FEET = /^(\d+(?:[.,]\d+)?)\s*(?:ft|feet|foot|['′])$/i;
const FEET_INCHES = /^(\d+)\s*(?:ft|['′])\s*(\d+(?:[.,]\d+)?)\s*(?:in|["″]|'')$/i;

/** A length as maps write it, in metres where no unit is named: 12, '12 m', '12,5', "40'", '40 ft', '12′6″'. */
export function lengthM(value: unknown): number | null {
  if (typeof value === 'number') return Number.isFinite(value) ? value : null;
  if (typeof value !== 'string') return null;
  const text = value.trim().slice(0, 30);
  const metres = METRES.exec(text)?.[1];
  if (metres !== undefined) return decimal(metres);
  const feet = FEET.exec(text)?.[1];
  if (feet !== undefined) return FOOT_M * decimal(feet);
  const [, wholeFeet, inches] = FEET_INCHES.exec(text) ?? [];
  return wholeFeet === undefined || inches === undefined
    ? null
    : FOOT_M * (decimal(wholeFeet) + decimal(inches) / 12);
}

const decimal = (text: string): number => Number(text.replace(',', '.'));
