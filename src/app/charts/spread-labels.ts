/**
 * Moves labels along an axis so that neighbours keep a distance, each as near to its own place as
 * the ones before it allow, and none beyond the end where they fit at all. Shares of the axis.
 */
export function spreadLabels<Label extends { readonly share: number }>(
  labels: readonly Label[],
  gapShare: number,
): readonly (Label & { readonly shownShare: number })[] {
  const inOrder = labels.toSorted((one, other) => one.share - other.share);
  const shown: number[] = [];
  for (const { share } of inOrder)
    shown.push(Math.max(share, (shown.at(-1) ?? -Infinity) + gapShare));
  let limit = 1;
  for (let at = shown.length - 1; at >= 0; at -= 1) {
    shown[at] = Math.min(shown[at] ?? 0, limit);
    limit = (shown[at] ?? 0) - gapShare;
  }
  return inOrder.map((label, at) => ({ ...label, shownShare: shown[at] ?? label.share }));
}
