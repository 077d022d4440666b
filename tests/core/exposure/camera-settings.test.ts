import { describe, expect, test } from 'vitest';
import { cameraEv, formatEvAsSettings } from '../../../src/core/exposure/camera-settings.ts';
import { largestError } from '../../support/largest-error.ts';

const unfiltered = { iso: 100, filterStops: 0 };

describe('the EV of camera settings', () => {
  const settingError = largestError('EV of settings against the APEX definition', 'stop', {
    quantity: 'EV of camera settings',
    method: 'log2(N²/t) − log2(ISO/100) + filters',
    comparedWith: 'the APEX definition, four decimals',
  });
  const nominalError = largestError(
    'EV of settings against published ones, nominal names',
    'stop',
    {
      quantity: 'EV of camera settings',
      method: 'log2(N²/t) − log2(ISO/100) + filters',
      comparedWith: 'a practitioner’s published settings, nominal names',
    },
  );

  // log2(N²/t), four decimals, from the APEX definition.
  test.each([
    { fNumber: 16, shutterS: 1 / 100, ev: 14.6439 },
    { fNumber: 16, shutterS: 1 / 125, ev: 14.9658 },
    { fNumber: 2.8, shutterS: 1 / 60, ev: 8.8777 },
    { fNumber: 8, shutterS: 1 / 125, ev: 12.9658 },
    { fNumber: 11, shutterS: 1 / 250, ev: 14.8846 },
    { fNumber: 1.4, shutterS: 30, ev: -3.936 },
  ])('f/$fNumber at $shutterS s is EV $ev', ({ fNumber, shutterS, ev }) => {
    const found = cameraEv({ ...unfiltered, fNumber, shutterS });
    expect(settingError(found - ev)).toBeLessThan(1e-4);
  });

  // Full-sun equivalents at ISO 100 as a practitioner lists them ('Stopping down a fast lens to
  // flash sync speed'): nominal names, so within 0.1 stop of EV 14.6.
  test.each([
    [2.8, 3200],
    [4, 1600],
    [5.6, 800],
    [8, 400],
    [11, 200],
    [16, 100],
  ])('f/%d at 1/%d is the same exposure', (fNumber, perSecond) => {
    const found = cameraEv({ ...unfiltered, fNumber, shutterS: 1 / perSecond });
    expect(nominalError(found - 14.64)).toBeLessThan(0.1);
  });

  // 'Portraits outdoors using ambient and a strobe': 3-stop ND, ISO 64, 1/60, f/1.8.
  test('a filter is added: settings of EV 8.25 behind a 3-stop ND show a scene of EV 11.25', () => {
    const settings = { iso: 64, shutterS: 1 / 60, fNumber: 1.8 };
    expect(nominalError(cameraEv({ ...settings, filterStops: 0 }) - 8.25)).toBeLessThan(0.05);
    expect(nominalError(cameraEv({ ...settings, filterStops: 3 }) - 11.25)).toBeLessThan(0.05);
  });

  // 'Metering step by step': 1/200 f/4, ISO 3200 to ISO 400 takes three stops of ambient away.
  test('ISO 3200 to ISO 400 is three stops', () => {
    const settings = { shutterS: 1 / 200, fNumber: 4, filterStops: 0 };
    const lost = cameraEv({ ...settings, iso: 400 }) - cameraEv({ ...settings, iso: 3200 });
    expect(lost).toBeCloseTo(3, 9);
  });
});

describe('an EV is shown as what a camera would show', () => {
  // The first is the example of the product's own page; all are the exact series: 1/250 is 2^−8.
  test.each([
    { ev: 16.1, text: 'f/16 + 0.1 at 1/250, ISO 100' },
    { ev: 15, text: 'f/11 at 1/250, ISO 100' },
    { ev: 11.04, text: 'f/2.8 at 1/250, ISO 100' },
    { ev: 10.4, text: 'f/2.8 + 0.4 at 1/125, ISO 100' },
    { ev: 2, text: 'f/2.8 at 2 s, ISO 100' },
  ])('EV $ev: $text', ({ ev, text }) => {
    expect(formatEvAsSettings(ev)).toBe(text);
  });
});
