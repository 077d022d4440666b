/** Cells of a table of separated values, quoted or not, as RFC 4180 has them; empty lines are no rows. */
export function csvRows(
  text: string,
  delimiter: string,
  maxRows: number,
): readonly (readonly string[])[] {
  const rows: string[][] = [];
  let row: string[] = [];
  let at = 0;
  while (at <= text.length && rows.length < maxRows) {
    const cell = quotedCell(text, at, delimiter) ?? plainCell(text, at, delimiter);
    row.push(cell.text);
    at = cell.end + 1;
    if (text.charAt(cell.end) === delimiter) continue;
    if (text.startsWith('\r\n', cell.end)) at += 1;
    if (row.length > 1 || row[0] !== '') rows.push(row);
    row = [];
  }
  return rows;
}

/** `end`: where the delimiter, line end or end of the text stands behind the cell. */
type Cell = { readonly text: string; readonly end: number };

function plainCell(text: string, start: number, delimiter: string): Cell {
  let end = start;
  while (end < text.length && !isCellEnd(text.charAt(end), delimiter)) end += 1;
  return { text: text.slice(start, end), end };
}

const isCellEnd = (char: string, delimiter: string): boolean =>
  char === delimiter || char === '\n' || char === '\r';

/** Null where no quoted cell begins. */
function quotedCell(text: string, start: number, delimiter: string): Cell | null {
  let at = start;
  while (text.charAt(at) === ' ') at += 1;
  if (text.charAt(at) !== '"') return null;
  const from = at + 1;
  let close = text.indexOf('"', from);
  while (close >= 0 && text.charAt(close + 1) === '"') close = text.indexOf('"', close + 2);
  if (close < 0) return { text: text.slice(from).replaceAll('""', '"'), end: text.length };
  const behind = plainCell(text, close + 1, delimiter);
  return { text: text.slice(from, close).replaceAll('""', '"') + behind.text, end: behind.end };
}

/** With these a spreadsheet takes a text for a formula. */
const FORMULA = /^'*[=+\-@\t\r＝＋－＠]/;

/** A text as a cell that no spreadsheet computes; an apostrophe before it keeps it a text. */
export const textCell = (text: string): string => cell(FORMULA.test(text) ? `'${text}` : text);

/** The text of a cell that was kept from being a formula. */
export const textOfCell = (text: string): string =>
  text.startsWith("'") && FORMULA.test(text) ? text.slice(1) : text;

const cell = (text: string): string =>
  /[",;\t\r\n]|^\s|\s$/.test(text) ? `"${text.replaceAll('"', '""')}"` : text;
