import { describe, expect, test } from 'vitest';

import { editLight, editSetup } from '../../../src/core/plan/edits.ts';
import { isTooUneven, sideSpreads } from '../../../src/core/plan/side-spread.ts';
import { defined } from '../../support/defined.ts';
import { caseOfMinute, demoMinute } from '../../support/demo-minute.ts';

/** Two people 2 m apart, a key of one head from the right, another light of the key's side from the left. */
const twoKeys = (power: number | null, heads: number): ReturnType<typeof caseOfMinute> =>
  caseOfMinute(
    demoMinute(
      'quartet',
      '20:30',
      'clear',
      editSetup('quartet', { people: 2, spacingM: 2 }),
      editLight('quartet', 'key', {
        modifierId: 'reflector',
        angleDeg: 60,
        distanceM: 4,
        heightM: 1.65,
      }),
      editLight('quartet', 'fill', {
        role: 'key',
        headId: 'head-600',
        modifierId: 'reflector',
        headCount: heads,
        pinnedPowerStops: power,
        angleDeg: -60,
        distanceM: 4,
        heightM: 1.65,
      }),
    ),
  );

describe('lights of one side add up on the faces', () => {
  test('two equal keys from both sides leave the two faces alike', () => {
    const [side] = sideSpreads(twoKeys(null, 1).sources, twoKeys(null, 1).setup);
    expect(side).toMatchObject({ role: 'key', lightIds: ['key', 'fill'] });
    expect(defined(side).faces.spreadStops).toBeCloseTo(0, 9);
  });

  test.each([
    ['three heads on the left', null, 3, 3],
    ['the left one pinned two stops down', -2, 1, 1 / 4],
  ] as const)('%s: each face has its sum, by Pythagoras', (_, power, heads, left) => {
    const { sources, setup } = twoKeys(power, heads);
    const [side] = sideSpreads(sources, setup);
    // The ends lie inside the reflector's even beam; d² + r² with r = 0.09 m.
    const near = (4 * Math.sin(Math.PI / 3) - 1) ** 2 + 4 + 0.0081;
    const far = (4 * Math.sin(Math.PI / 3) + 1) ** 2 + 4 + 0.0081;
    const [leftFace, rightFace] = [left / near + 1 / far, left / far + 1 / near];
    const spread = Math.abs(Math.log2(leftFace / rightFace));
    expect(defined(side).faces.spreadStops).toBeCloseTo(spread, 6);
    expect(isTooUneven(defined(side), { spreadLimitStops: spread - 0.01 })).toBe(true);
    expect(isTooUneven(defined(side), { spreadLimitStops: spread })).toBe(false);
  });

  test('a fill is judged by itself, rims are not', () => {
    const { sources, setup } = caseOfMinute(
      demoMinute('two-violins', '08:00', 'clear', editSetup('two-violins', { people: 3 })),
    );
    expect(sideSpreads(sources, setup).map(({ role }) => role)).toEqual(['key']);
  });
});
