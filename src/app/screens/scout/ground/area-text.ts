const M2_PER_HECTARE = 10_000;

/** '840 m²', '12,300 m²', '4.2 ha': three digits, no more than outlines are good for. */
export function areaText(areaM2: number): string {
  const rounded = Number(areaM2.toPrecision(3));
  return rounded < 2 * M2_PER_HECTARE
    ? `${rounded.toLocaleString('en-GB')} m²`
    : `${Number((areaM2 / M2_PER_HECTARE).toPrecision(3)).toLocaleString('en-GB')} ha`;
}
