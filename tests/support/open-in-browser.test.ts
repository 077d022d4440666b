import { describe, expect, test } from 'vitest';
import { openInBrowser } from './open-in-browser.ts';

describe('opening the address never stops the start', () => {
  test('a system without an opener says no', async () => {
    expect(await openInBrowser('http://127.0.0.1/', ['no-such-opener'])).toBe(false);
  });
  test('an opener that fails says no', async () => {
    expect(
      await openInBrowser('http://127.0.0.1/', [process.execPath, '-e', 'process.exit(3)']),
    ).toBe(false);
  });
  test('an opener that is handed the address and succeeds says yes', async () => {
    const check = 'process.exit(process.argv[1] === "http://127.0.0.1/" ? 0 : 1)';
    expect(await openInBrowser('http://127.0.0.1/', [process.execPath, '-e', check])).toBe(true);
  });
});
