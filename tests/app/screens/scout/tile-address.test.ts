import { expect, test } from 'vitest';

import { tileAddressFault, tileHost } from '../../../../src/app/screens/scout/tile-address.ts';

test('an https template with z, x and y is taken, and its server is named', () => {
  expect(tileAddressFault('https://{s}.tiles.example.org/{z}/{x}/{y}.png?key=1')).toBeNull();
  expect(tileHost('https://{s}.tiles.example.org/{z}/{x}/{y}.png')).toBe('a.tiles.example.org');
  expect(tileAddressFault('http://127.0.0.1:8080/{z}/{x}/{y}.png')).toBeNull();
});

test.each([
  { text: '', found: 'found nothing' },
  { text: 'https://tiles.example.org/{z}/{x}.png', found: 'found no {y}' },
  { text: 'https://tiles.example.org/{z}/{x}/{y}?k={key}', found: 'found {key}' },
  { text: 'http://tiles.example.org/{z}/{x}/{y}.png', found: 'found ‘http://tiles' },
  { text: 'tiles.example.org/{z}/{x}/{y}.png', found: 'found ‘tiles.example' },
])('‘$text’ is refused with what was found and what was expected', ({ text, found }) => {
  const fault = tileAddressFault(text);
  expect(fault).toContain(found);
  expect(fault).toContain('expected an https address with {z}, {x} and {y}');
});
