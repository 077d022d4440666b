/** A DATE-TIME with UTC time (RFC 5545, 3.3.5, form 2), '20270514T143000Z'; the running second. */
export const utcDateTime = (instantMs: number): string =>
  new Date(instantMs).toISOString().replace(/[-:]|\.\d+/g, '');
