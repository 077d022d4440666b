/**
 * Middles of labels as near as they can be to where they belong, in the same order, none nearer to
 * its neighbour than the gap and none outside; all lengths in one unit. Wanted middles ascend.
 * Where they do not fit, the last ones run out of the bottom.
 */
export function labelPlaces(
  wanted: readonly number[],
  { gap, from, to }: { readonly gap: number; readonly from: number; readonly to: number },
): readonly number[] {
  type Cluster = { first: number; count: number; sum: number };
  const clusters: Cluster[] = [];
  const topOf = ({ count, sum }: Cluster): number => {
    const size = (count - 1) * gap;
    return Math.max(from, Math.min(to - size, sum / count - size / 2));
  };
  wanted.forEach((middle, first) => {
    let cluster: Cluster = { first, count: 1, sum: middle };
    for (let above = clusters.at(-1); above !== undefined; above = clusters.at(-1)) {
      if (topOf(above) + above.count * gap <= topOf(cluster)) break;
      clusters.pop();
      cluster = {
        first: above.first,
        count: above.count + cluster.count,
        sum: above.sum + cluster.sum,
      };
    }
    clusters.push(cluster);
  });
  return clusters.flatMap((cluster) =>
    Array.from({ length: cluster.count }, (_, place) => topOf(cluster) + place * gap),
  );
}
