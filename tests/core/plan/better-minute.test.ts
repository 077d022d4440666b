import { describe, expect, test } from 'vitest';

import { betterMinutes } from '../../../src/core/plan/better-minute.ts';
import { editSetup } from '../../../src/core/plan/edits.ts';
import { setupView } from '../../../src/core/plan/setup-view.ts';
import { instantAtClock } from '../../../src/core/units/civil-time.ts';
import { defined } from '../../support/defined.ts';
import { caseOfMinute, demoMinute } from '../../support/demo-minute.ts';

describe('the nearest minutes at which a setup works as it is', () => {
  const asked = demoMinute('quartet', '19:00', 'clear');
  const found = betterMinutes(asked, caseOfMinute(asked));
  const worksAt = (instantMs: number): boolean => {
    const view = setupView({ ...asked, instantMs });
    return view.ok && view.value.answer.ok;
  };

  test('are one later and one earlier the same day', () => {
    expect(found).toMatchObject([
      { kind: 'clock', later: true },
      { kind: 'clock', later: false },
    ]);
  });

  test('work, and no minute between them and the one asked about does', () => {
    for (const change of found) {
      if (change.kind !== 'clock') continue;
      const there = defined(instantAtClock(asked.shoot.date, change.clock, 'Europe/Rome'));
      expect(Math.sign(there - asked.instantMs)).toBe(change.later ? 1 : -1);
      expect(worksAt(there), change.clock).toBe(true);
      const back = change.later ? -60_000 : 60_000;
      expect(worksAt(there + back), `a minute before ${change.clock}`).toBe(false);
      for (
        let at = there + 5 * back;
        Math.sign(at - asked.instantMs) === -Math.sign(back);
        at += 7 * back
      )
        expect(worksAt(at)).toBe(false);
    }
  });

  test('are none when the time is pinned', () => {
    const pinned = demoMinute(
      'quartet',
      '19:00',
      'clear',
      editSetup('quartet', { clockPinned: true }),
    );
    expect(betterMinutes(pinned, caseOfMinute(pinned))).toEqual([]);
  });
});
