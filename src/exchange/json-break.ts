/** Where a text stops being JSON; `atEnd`: it only breaks off there, as a file cut short does. */
export type JsonBreak = { readonly index: number; readonly atEnd: boolean };

/**
 * Finds the place at which JSON.parse would give up, the same in every browser, whose own messages
 * differ and mostly name no place. null where the text is whole. Grammar of RFC 8259.
 */
export function jsonBreak(text: string): JsonBreak | null {
  const open: ('{' | '[')[] = [];
  let want: 'value' | 'first-value' | 'key' | 'first-key' | 'colon' | 'next' = 'value';
  let at = 0;
  const close = (): void => {
    open.pop();
    want = 'next';
    at += 1;
  };
  for (;;) {
    while (SPACE.has(text.charAt(at))) at += 1;
    if (at >= text.length)
      return open.length === 0 && want === 'next' ? null : { index: at, atEnd: true };
    const char = text.charAt(at);
    const inside = open.at(-1);
    if (want === 'colon') {
      if (char !== ':') return { index: at, atEnd: false };
      want = 'value';
      at += 1;
    } else if (want === 'next') {
      if (inside === undefined) return { index: at, atEnd: false };
      if (char === (inside === '{' ? '}' : ']')) close();
      else if (char === ',') {
        want = inside === '{' ? 'key' : 'value';
        at += 1;
      } else return { index: at, atEnd: false };
    } else if (want === 'key' || want === 'first-key') {
      if (char === '}' && want === 'first-key') close();
      else {
        const end = char === '"' ? stringEnd(text, at) : { index: at, atEnd: false };
        if (typeof end !== 'number') return end;
        at = end;
        want = 'colon';
      }
    } else if (char === ']' && want === 'first-value') close();
    else if (char === '{' || char === '[') {
      open.push(char);
      want = char === '{' ? 'first-key' : 'first-value';
      at += 1;
    } else {
      const end = char === '"' ? stringEnd(text, at) : wordEnd(text, at);
      if (typeof end !== 'number') return end;
      at = end;
      want = 'next';
    }
  }
}

const SPACE: ReadonlySet<string> = new Set([' ', '\t', '\n', '\r']);

function stringEnd(text: string, start: number): number | JsonBreak {
  for (let at = start + 1; at < text.length; at += 1) {
    const char = text.charAt(at);
    if (char === '"') return at + 1;
    if (char < ' ') return { index: at, atEnd: false };
    if (char !== '\\') continue;
    const escape = text.slice(at + 1, at + 6);
    const whole = /^(?:["\\/bfnrt]|u[\dA-Fa-f]{4})/.exec(escape)?.[0];
    if (whole === undefined) {
      const cut = at + 1 + escape.length === text.length && /^(?:u[\dA-Fa-f]*)?$/.test(escape);
      return { index: cut ? text.length : at, atEnd: cut };
    }
    at += whole.length;
  }
  return { index: text.length, atEnd: true };
}

/** Of a number, true, false or null. */
function wordEnd(text: string, at: number): number | JsonBreak {
  const written = /[-+.\w]*/y;
  written.lastIndex = at;
  const word = written.exec(text)?.[0] ?? '';
  if (WORD.test(word)) return at + word.length;
  const cut = at + word.length === text.length && CUT_WORD.test(word);
  return { index: cut ? text.length : at, atEnd: cut };
}

const WORD = /^(?:-?(?:0|[1-9]\d*)(?:\.\d+)?(?:[eE][-+]?\d+)?|true|false|null)$/;
const CUT_WORD =
  /^(?:-|-?(?:0|[1-9]\d*)(?:\.|(?:\.\d+)?[eE][-+]?)|t|tr|tru|f|fa|fal|fals|n|nu|nul)$/;
