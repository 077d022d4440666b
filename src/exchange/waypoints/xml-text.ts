/** Text for an element or attribute of XML 1.0; characters it cannot hold are dropped. */
export const xmlText = (text: string): string =>
  text
    .replace(/(?![\n\t])[\p{Cc}\p{Cs}\uFFFE\uFFFF]/gu, '')
    .replaceAll('&', '&amp;')
    .replaceAll('<', '&lt;')
    .replaceAll('>', '&gt;')
    .replaceAll('"', '&quot;');

/** '<name>text</name>' on a line of its own, or nothing where there is no text. */
export const xmlLine = (indent: string, name: string, text: string | null): string =>
  text === null || text === '' ? '' : `${indent}<${name}>${xmlText(text)}</${name}>\n`;
