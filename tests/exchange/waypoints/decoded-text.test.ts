import { describe, expect, test } from 'vitest';

import { decodedText } from '../../../src/exchange/waypoints/decoded-text.ts';

const bytesOf = (text: string): Uint8Array => new TextEncoder().encode(text);
const utf16 = (text: string, littleEndian: boolean): Uint8Array => {
  const view = new DataView(new ArrayBuffer(text.length * 2));
  for (let at = 0; at < text.length; at += 1)
    view.setUint16(at * 2, text.charCodeAt(at), littleEndian);
  return new Uint8Array(view.buffer);
};

describe('the text of a file', () => {
  test.each([
    ['UTF-8', bytesOf('Größe')],
    ['UTF-8 with its mark', bytesOf('\uFEFFGröße')],
    ['UTF-16, low byte first, with its mark', utf16('\uFEFFGröße', true)],
    ['UTF-16, high byte first, with its mark', utf16('\uFEFFGröße', false)],
    ['UTF-16 without a mark', utf16('Größe', true)],
  ])('%s', (_, bytes) => {
    expect(decodedText(bytes)).toEqual({ ok: true, value: { text: 'Größe', notes: [] } });
  });

  test('an encoding that XML declares is followed', () => {
    const declared = '<?xml version="1.0" encoding="ISO-8859-1"?><a>';
    const bytes = new Uint8Array([...bytesOf(declared), 0xf6]);
    expect(decodedText(bytes)).toMatchObject({ ok: true, value: { text: `${declared}ö` } });
  });

  test('a declared UTF-16 that is none is read as it is', () => {
    const text = '<?xml version="1.0" encoding="utf-16"?><a>ö';
    expect(decodedText(bytesOf(text))).toMatchObject({ ok: true, value: { text } });
  });

  test('what is not UTF-8 is read as Windows-1252, and that is said', () => {
    // 0xF6 is ö in Windows-1252.
    const read = decodedText(new Uint8Array([0x47, 0xf6]));
    expect(read).toMatchObject({ ok: true, value: { text: 'Gö' } });
    expect(read.ok && read.value.notes[0]).toMatch(/read as Windows-1252/);
  });

  test('a picture is no text', () => {
    const jpeg = new Uint8Array([0xff, 0xd8, 0xff, 0xe0, 0, 0x10, 0x4a, 0x46, 0x49, 0x46, 0]);
    expect(decodedText(jpeg)).toMatchObject({
      ok: false,
      problem: 'Expected text with waypoints, found a binary file, such as a picture.',
    });
  });

  test('an encoding that nobody knows is named', () => {
    expect(decodedText(bytesOf('<?xml version="1.0" encoding="x-unheard-of"?><a/>'))).toMatchObject(
      {
        ok: false,
        problem: expect.stringMatching(/encoding “x-unheard-of”.*expected UTF-8/),
      },
    );
  });
});
