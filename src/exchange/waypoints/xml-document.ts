import { fail, ok, type Result } from '../../core/units/result.ts';
import { xmlProlog } from './xml-prolog.ts';

/** A file's XML as a document of the page that runs nothing and fetches nothing; for the page only, workers have no parser. */
export function xmlDocument(
  text: string,
  { root, label }: { readonly root: string; readonly label: string },
): Result<Document, string> {
  const prolog = xmlProlog(text);
  if (prolog?.declares === true)
    return fail(
      `The ${label} file declares entities of its own, which can be made to explode. Expected a file without them.`,
    );
  if (prolog?.root !== root)
    return fail(
      `Expected a ${label} file, found ${prolog?.root ? `XML that begins with <${prolog.root.slice(0, 40)}>` : 'no XML'}.`,
    );
  const document = new DOMParser().parseFromString(text, 'application/xml');
  if (document.getElementsByTagName('parsererror').length === 0) return ok(document);
  return fail(
    new RegExp(`</(?:[\\w.-]+:)?${root}\\s*>\\s*$`, 'i').test(text.slice(-1000))
      ? `The ${label} file is damaged: it is not well-formed XML.`
      : `The ${label} file was cut short: it does not end with </${root}>.`,
  );
}

/** Every element of a local name below one, whatever its namespace. */
export const elementsBelow = (
  parent: Document | Element,
  localName: string,
): readonly Element[] => [...parent.getElementsByTagNameNS('*', localName)];

/** The first child of a local name. */
export const childElement = (parent: Element, localName: string): Element | null =>
  [...parent.children].find((child) => child.localName === localName) ?? null;

/** The text of the first child of a local name, or null where it is missing or empty. */
export const childText = (parent: Element, localName: string): string | null => {
  const text = childElement(parent, localName)?.textContent.trim() ?? '';
  return text === '' ? null : text;
};
