import { expect, test } from 'vitest';
import { trueAltitudeFromSuncalc } from '../../../src/core/sun-moon/suncalc-altitude.ts';

// Sæmundsson's formula at 1010 hPa and 10 °C (Meeus, ch. 16) with the constants 10.26 and 5.10 that
// suncalc states for it; the 1.02′ is rounded to four digits there, which leaves up to 0.0001°.
const liftDeg = (trueDeg: number): number =>
  1.02 / Math.tan(((trueDeg + 10.26 / (trueDeg + 5.1)) * Math.PI) / 180) / 60;

test.each([0, 0.1, 0.5, 1, 2, 5, 10, 30, 60, 90])(
  'a body at true %s°, lifted by the air, is put back there',
  (trueDeg) => {
    const back = trueAltitudeFromSuncalc(trueDeg + liftDeg(trueDeg));
    expect(Math.abs(back - trueDeg)).toBeLessThan(0.0001);
  },
);

test.each([-0.1, -0.8333, -6, -50])(
  'below the horizon, at true %s°, it loses the lift of the horizon itself',
  (trueDeg) => {
    const back = trueAltitudeFromSuncalc(trueDeg + liftDeg(0));
    expect(Math.abs(back - trueDeg)).toBeLessThan(0.0001);
  },
);
