import { expect, test, vi } from 'vitest';
import { askOwnPosition } from '../../../src/app/map/own-position.ts';

type Ask = Geolocation['getCurrentPosition'];

const refusing = (code: number): Pick<Geolocation, 'getCurrentPosition'> => ({
  getCurrentPosition: (_found, failed) =>
    failed?.({
      code,
      message: 'of the browser',
      PERMISSION_DENIED: 1,
      POSITION_UNAVAILABLE: 2,
      TIMEOUT: 3,
    }),
});

test('the position and its accuracy are what the device says', async () => {
  const getCurrentPosition = vi.fn<Ask>((found) =>
    found({
      coords: { latitude: 45.65, longitude: 13.76, accuracy: 12.4 },
    } as GeolocationPosition),
  );
  expect(await askOwnPosition({ getCurrentPosition })).toEqual({
    ok: true,
    value: { point: { latitudeDeg: 45.65, longitudeDeg: 13.76 }, accuracyM: 12.4 },
  });
  expect(getCurrentPosition).toHaveBeenCalledTimes(1);
  expect(getCurrentPosition.mock.calls[0]?.[2]).toMatchObject({ timeout: 20_000 });
});

// The codes of the W3C Geolocation API: 1 permission denied, 2 position unavailable, 3 timeout.
test.each([
  [1, /refused/],
  [2, /does not know where it is/],
  [3, /within 20 seconds/],
  [99, /does not know where it is/],
])('problem %i is a sentence', async (code, sentence) => {
  expect(await askOwnPosition(refusing(code))).toEqual({
    ok: false,
    problem: expect.stringMatching(sentence),
  });
});

test('a page without a secure address says that it gets no position', async () => {
  expect(await askOwnPosition(undefined)).toEqual({
    ok: false,
    problem: expect.stringContaining('https'),
  });
});
