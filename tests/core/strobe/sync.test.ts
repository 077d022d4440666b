import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import {
  clippedShare,
  clippedStops,
  flashDurationAtS,
  flashShutterS,
  hssFlashLossStops,
  powerControl,
  totalFlashDurationS,
} from '../../../src/core/strobe/sync.ts';
import { largestError } from '../../support/largest-error.ts';

describe('high-speed sync against published figures', () => {
  const hssError = largestError('high-speed sync loss against published figures', 'stop', {
    quantity: 'high-speed sync',
    method: 'a constant loss, then stop by stop with the shutter',
    comparedWith: 'published figures, nominal f-numbers',
  });

  test('two stops on entering at 1/320 over 1/250: f/8 becomes f/3.5', () => {
    // A community camera forum, 'HSS power loss' (2014), nominal f-numbers.
    const loss = hssFlashLossStops({ shutterS: 1 / 320, syncShutterS: 1 / 250, hssLossStops: 2 });
    expect(hssError(loss - 2 * Math.log2(8 / 3.5))).toBeLessThan(0.05);
  });

  test('1.5 on entering, 1/200 to 1/2000: 4.8 stops, 3.5 % left', () => {
    const loss = hssFlashLossStops({
      shutterS: 1 / 2000,
      syncShutterS: 1 / 200,
      hssLossStops: 1.5,
    });
    expect(hssError(loss - 4.8)).toBeLessThan(0.05);
    expect(Math.abs(2 ** -loss - 0.035)).toBeLessThan(0.0005);
  });

  test('every two stops of shutter halve the range', () => {
    const shot = { syncShutterS: 1 / 250, hssLossStops: 2 };
    const lost =
      hssFlashLossStops({ ...shot, shutterS: 1 / 4000 }) -
      hssFlashLossStops({ ...shot, shutterS: 1 / 1000 });
    expect(2 ** (lost / 2)).toBeCloseTo(2, 9);
  });

  test.each([500, 1000, 2000, 4000])('against ambient 1/%d costs the same 2 stops', (perSecond) => {
    const divided = flashShutterS({
      shutterS: 1 / perSecond,
      syncShutterS: 1 / 250,
      hssLossStops: 2,
    });
    expect(hssError(Math.log2(divided * 250) - 2)).toBeLessThan(1e-9);
  });

  test('1/512 is the exact value of a stated 1/500, 1/320 is not one of 1/250', () => {
    const entry = { hssLossStops: 2 };
    const exact = { ...entry, shutterS: 1 / 512, syncShutterS: 1 / 500 };
    const faster = { ...entry, shutterS: 1 / 320, syncShutterS: 1 / 250 };
    expect(hssFlashLossStops(exact)).toBe(0);
    expect(hssFlashLossStops(faster)).toBeGreaterThan(2);
  });

  test('at sync and slower nothing is lost', () => {
    const shot = { shutterS: 1 / 250, syncShutterS: 1 / 250, hssLossStops: 2 };
    expect(hssFlashLossStops(shot)).toBe(0);
    expect(flashShutterS({ ...shot, shutterS: 1 / 60 })).toBeCloseTo(1 / 60, 12);
  });
});

describe('flash duration against the shutter', () => {
  test('t0.1 is 3.32 times t0.5 of an exponential pulse', () => {
    // ln 10 / ln 2; the trade's rule is 'about three times'.
    expect(totalFlashDurationS(1 / 1000)).toBeCloseTo(3.3219 / 1000, 6);
  });

  test('a shutter of t0.1 loses a tenth, as the decaying pulse integrated in steps says', () => {
    const flashDurationS = 1 / 200;
    for (const shutterS of [1 / 400, 1 / 250, 1 / 200, 1 / 100]) {
      let after = 0;
      let whole = 0;
      const stepS = 1e-6;
      for (let timeS = stepS / 2; timeS < 0.05; timeS += stepS) {
        const light = 10 ** (-timeS / flashDurationS);
        whole += light;
        if (timeS > shutterS) after += light;
      }
      expect(Math.abs(clippedShare({ shutterS, flashDurationS }) - after / whole)).toBeLessThan(
        1e-4,
      );
    }
    expect(clippedShare({ shutterS: flashDurationS, flashDurationS })).toBeCloseTo(0.1, 9);
    expect(clippedStops({ shutterS: flashDurationS, flashDurationS })).toBeCloseTo(0.152, 3);
  });

  test('trigger delay comes off the shutter; a pulse without length loses nothing', () => {
    const shot = { shutterS: 1 / 200, flashDurationS: 1 / 400 };
    expect(clippedShare({ ...shot, triggerDelayS: 1 / 400 })).toBeCloseTo(0.1, 9);
    expect(clippedShare({ shutterS: 1 / 250, flashDurationS: 0 })).toBe(0);
  });
});

const atSync = (flashDurationS: number): number =>
  clippedStops({ shutterS: 1 / 250, flashDurationS });

describe('flash duration by power', () => {
  const durationError = largestError('flash duration between its two ends', 'stop');

  // A small flash's manual, printed in a Q&A, 'How flash power settings affect flash duration' (2011).
  const PER_SECOND = [1042, 1136, 2857, 5714, 10_000, 18_182, 25_000, 40_000] as const;
  const manual = {
    flashDurationS: 1 / PER_SECOND[0],
    flashDurationLowestS: 1 / PER_SECOND[7],
    minPowerStops: -7,
  };

  test.each(PER_SECOND.map((perSecond, below) => ({ perSecond, below })))(
    'from 1/1042 s at full and 1/40000 at 1/128, $below below full lasts 1/$perSecond',
    ({ perSecond, below }) => {
      const found = flashDurationAtS(manual, -below) ?? NaN;
      // Its first step changes its t0.5 little: the tail that is cut lies below half the peak.
      expect(durationError(Math.log2(found * perSecond))).toBeLessThan(below === 1 ? 0.65 : 0.4);
    },
  );

  test('half way down in stops it is the mean proportional of both ends', () => {
    const head = { flashDurationS: 1 / 100, flashDurationLowestS: 1 / 6400, minPowerStops: -8 };
    expect(flashDurationAtS(head, -4)).toBeCloseTo(1 / 800, 9);
    expect(flashDurationAtS(head, 0)).toBeCloseTo(1 / 100, 12);
    expect(flashDurationAtS(head, -8)).toBeCloseTo(1 / 6400, 12);
  });

  test('with one end known it stays, with none there is no figure', () => {
    expect(flashDurationAtS({ flashDurationS: 1 / 300, minPowerStops: -8 }, -5)).toBe(1 / 300);
    expect(flashDurationAtS({ flashDurationLowestS: 1 / 9000, minPowerStops: -8 }, -5)).toBeNull();
  });

  test('a tail that is cut is shorter at every lower power, a lowered voltage longer', () =>
    fc.assert(
      fc.property(
        fc.double({ min: -8, max: -0.1, noNaN: true }),
        fc.double({ min: 1.2, max: 60, noNaN: true }),
        (powerStops, times) => {
          const flashDurationS = 1 / 250;
          const cut = { flashDurationS, flashDurationLowestS: flashDurationS / times };
          const lowered = { flashDurationS, flashDurationLowestS: flashDurationS * times };
          expect(powerControl(cut)).toBe('tail-cut');
          expect(powerControl(lowered)).toBe('voltage');
          expect(flashDurationAtS({ ...cut, minPowerStops: -8 }, powerStops)).toBeLessThan(
            flashDurationS,
          );
          expect(flashDurationAtS({ ...lowered, minPowerStops: -8 }, powerStops)).toBeGreaterThan(
            flashDurationS,
          );
        },
      ),
    ));

  test('at the sync limit a full-power tail of 1/200 s loses more than a very powerful head’s shutter spares', () => {
    // A forum thread on pulses and a practitioner's post on duration (2008): full-power tail about
    // 1/200 s, very powerful heads to 1/60 s.
    // −log2(1 − 10^(−0.8)) and −log2(1 − 10^(−0.24)).
    expect(atSync(1 / 200)).toBeCloseTo(0.249, 3);
    expect(atSync(1 / 60)).toBeCloseTo(1.237, 2);
  });
});
