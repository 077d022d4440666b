import { cosDeg } from '../units/angle.ts';

export type Quadrature = {
  readonly nodes: readonly number[];
  readonly weights: readonly number[];
};

/** Nodes and weights of Gauss and Legendre on −1 to 1; exact to the power 2 · count − 1. */
export const gaussLegendre = (count: number): Quadrature => {
  const nodes: number[] = [];
  const weights: number[] = [];
  for (let index = 0; index < count; index += 1) {
    let node = -cosDeg((180 * (index + 0.75)) / (count + 0.5));
    let slope = 1;
    for (let round = 0; round < 6; round += 1) {
      const [value, slopeThere] = legendre(count, node);
      slope = slopeThere;
      node -= value / slope;
    }
    nodes.push(node);
    weights.push(2 / ((1 - node * node) * slope * slope));
  }
  return { nodes, weights };
};

/** The quadrature moved from −1 to 1 onto another span. */
export const onSpan = (quadrature: Quadrature, from: number, to: number): Quadrature => ({
  nodes: quadrature.nodes.map((node) => (from + to) / 2 + ((to - from) / 2) * node),
  weights: quadrature.weights.map((weight) => (weight * (to - from)) / 2),
});

const legendre = (degree: number, x: number): readonly [value: number, slope: number] => {
  let before = 1;
  let value = x;
  for (let n = 2; n <= degree; n += 1) {
    [before, value] = [value, ((2 * n - 1) * x * value - (n - 1) * before) / n];
  }
  return [value, (degree * (x * value - before)) / (x * x - 1)];
};
