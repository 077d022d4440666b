import { plainLines } from '../plain-lines.ts';

/** A value of the type TEXT (RFC 5545, 3.3.11): no text can end its line and begin another property. */
export const textValue = (text: string): string =>
  plainLines(text)
    .replace(/[\\;,]/g, '\\$&')
    .replaceAll('\n', '\\n');
