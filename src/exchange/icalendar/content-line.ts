/** RFC 5545, 3.1: not counting the line end, the space of a continuation included. */
const MAX_OCTETS = 75;

/** 'NAME:value', its value already escaped, folded as RFC 5545 has it and never within a character. */
export function contentLine(name: string, value: string): string {
  let folded = '';
  let octets = 0;
  for (const character of `${name}:${value}`) {
    const size = utf8Octets(character);
    if (octets + size > MAX_OCTETS) {
      folded += '\r\n ';
      octets = 1;
    }
    folded += character;
    octets += size;
  }
  return `${folded}\r\n`;
}

const utf8Octets = (character: string): number => {
  const code = character.codePointAt(0) ?? 0;
  if (code < 0x80) return 1;
  if (code < 0x800) return 2;
  return code < 0x10000 ? 3 : 4;
};
