import { ok, type Result } from '../../core/units/result.ts';
import { partFragment } from './hand-over-part.ts';
import { handOverProblem, type HandOverProblem } from './hand-over-problem.ts';
import { sizeText, type PackedHandOver } from './pack-hand-over.ts';

/** As long as an address may be that everybody has to take (RFC 9110, 4.1); longer ones get lost on some ways. */
export const MAX_LINK_CHARACTERS = 8000;

/** The link that opens the app with the shoot; `appAddress` is where the app is open, its fragment is dropped. */
export function handOverLink(
  packed: PackedHandOver,
  appAddress: string,
): Result<string, HandOverProblem> {
  const link = `${withoutFragment(appAddress)}${partFragment({ number: 1, of: 1, ...packed })}`;
  return link.length <= MAX_LINK_CHARACTERS
    ? ok(link)
    : handOverProblem(
        'too-long',
        `The link would have ${link.length.toLocaleString('en-GB')} characters; everybody takes up to ${MAX_LINK_CHARACTERS.toLocaleString('en-GB')}. Send the shoot file instead (${sizeText(packed.textBytes)}).`,
      );
}

export const withoutFragment = (address: string): string => address.replace(/#.*$/s, '');

/** A sentence where the address of the app is one that only this device knows; null elsewhere. */
export function onlyHereSentence(appAddress: string): string | null {
  const { protocol, hostname } = new URL(appAddress);
  const isHere =
    protocol === 'file:' || /^(?:.+\.)?localhost$|^127\.|^\[::1\]$|^0\.0\.0\.0$/.test(hostname);
  return isHere
    ? `The app is open here at an address that only this device knows (${hostname === '' ? 'a file' : hostname}): a link or code opens nothing on another. Send the shoot file instead.`
    : null;
}
