import { expect, test } from 'vitest';
import { gaussLegendre, onSpan } from '../../../src/core/sky/gauss-legendre.ts';

test('five nodes and weights as in the Handbook of Mathematical Functions, table 25.4', () => {
  const { nodes, weights } = gaussLegendre(5);
  const expectedNodes = [-0.9061798459, -0.5384693101, 0, 0.5384693101, 0.9061798459];
  const expectedWeights = [0.2369268851, 0.4786286705, 0.5688888889, 0.4786286705, 0.2369268851];
  expectedNodes.forEach((node, at) => expect(nodes[at]).toBeCloseTo(node, 9));
  expectedWeights.forEach((weight, at) => expect(weights[at]).toBeCloseTo(weight, 9));
});

test('twelve nodes integrate a power of 23 exactly, on any span', () => {
  const { nodes, weights } = onSpan(gaussLegendre(12), 0, 2);
  const sum = nodes.reduce((total, node, at) => total + (weights[at] ?? NaN) * node ** 23, 0);
  expect(sum / (2 ** 24 / 24)).toBeCloseTo(1, 10);
});
