/** What is wrong with an address template of map tiles, or null. */
export function tileAddressFault(text: string): string | null {
  const expected = 'expected an https address with {z}, {x} and {y}, one for each tile';
  if (text.trim() === '') return `found nothing; ${expected}`;
  const alien = /\{ *(?!(?:s|x|y|z|r) *\})[^}]*\}?/.exec(text);
  if (alien !== null) return `found ${alien[0]}; ${expected}`;
  const missing = ['{z}', '{x}', '{y}'].filter((part) => !text.includes(part));
  if (missing.length > 0) return `found no ${missing.join(', ')}; ${expected}`;
  return tileHost(text) === null ? `found ‘${text.slice(0, 40)}’; ${expected}` : null;
}

/** The server that tiles are asked of; null where the template is no address of one. */
export function tileHost(template: string): string | null {
  const filled = template.replace(/\{s\}/g, 'a').replace(/[{}]/g, '');
  if (!URL.canParse(filled)) return null;
  const address = new URL(filled);
  const onThisDevice = address.hostname === '127.0.0.1' || address.hostname === 'localhost';
  return address.protocol === 'https:' || (address.protocol === 'http:' && onThisDevice)
    ? address.host
    : null;
}
