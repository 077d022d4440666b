/** What is wrong with the address of a query interface, or null; an empty one is none yet. */
export function footprintsAddressFault(text: string): string | null {
  const address = text.trim();
  return address === '' || footprintsHost(address) !== null
    ? null
    : `found ‘${address.slice(0, 40)}’; expected the https address of a query interface`;
}

/** The server that would be asked; null where the text is no address of one. */
export function footprintsHost(text: string): string | null {
  if (!URL.canParse(text.trim())) return null;
  const address = new URL(text.trim());
  const isOnDevice = address.hostname === '127.0.0.1' || address.hostname === 'localhost';
  return address.protocol === 'https:' || (isOnDevice && address.protocol === 'http:')
    ? address.host
    : null;
}
