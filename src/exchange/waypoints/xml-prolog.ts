/** What stands before and in the first tag of a text that may be XML. */
export type XmlProlog = {
  /** Of the root element, without prefix, in lower case; null where there is none. */
  readonly root: string | null;
  /** Of the document type, in lower case; null where none is declared. */
  readonly documentType: string | null;
  /** Whether the document type brings declarations of its own, with which entities can be made to explode. */
  readonly declares: boolean;
};

const SKIP = /\s+|<\?[\s\S]*?\?>|<!--[\s\S]*?-->/y;
const DOCUMENT_TYPE = /<!doctype\s+([\w:.-]+)([^[>]*)([[>])/iy;
const ROOT = /<(?:[\w.-]+:)?([\w.-]+)/y;

/** Null for what does not start as XML does. */
export function xmlProlog(text: string): XmlProlog | null {
  let at = text.startsWith('\uFEFF') ? 1 : 0;
  if (!/^\s*</.test(text.slice(at, at + 1000))) return null;
  let documentType: string | null = null;
  let declares = false;
  const match = (pattern: RegExp): RegExpExecArray | null => {
    pattern.lastIndex = at;
    const found = pattern.exec(text);
    if (found !== null) at = pattern.lastIndex;
    return found;
  };
  for (;;) {
    if (match(SKIP) !== null) continue;
    const type = match(DOCUMENT_TYPE);
    if (type === null) break;
    documentType = type[1]?.toLowerCase() ?? null;
    declares = type[3] === '[';
    if (declares) return { root: null, documentType, declares };
  }
  return { root: match(ROOT)?.[1]?.toLowerCase() ?? null, documentType, declares };
}
