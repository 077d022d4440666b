/*
 * A strict reader of iCalendar by the grammar of RFC 5545, written against the standard alone: it
 * works on the octets of a file and throws at the first thing that the standard does not allow.
 */

export type CalendarProperty = {
  readonly name: string;
  readonly parameters: string;
  readonly value: string;
};

export type CalendarEvent = {
  readonly uid: string;
  readonly summary: string;
  readonly description: string;
  readonly location: string | null;
  readonly startMs: number;
  readonly endMs: number | null;
  readonly stampMs: number;
  readonly modifiedMs: number;
  readonly sequence: number;
  readonly status: string;
  readonly transparency: string;
  readonly geo: readonly [number, number] | null;
};

const CR = 0x0d;
const LF = 0x0a;
const SPACE = 0x20;
const TAB = 0x09;
const DEL = 0x7f;

/** 3.1: lines end with CR LF, no line is longer than 75 octets, none ends within a character. */
export const physicalLines = (file: Uint8Array): readonly Uint8Array[] => {
  const lines: Uint8Array[] = [];
  let from = 0;
  for (let at = 0; at < file.length; at += 1) {
    if (file[at] === LF) throw new Error(`a line feed without a carriage return at octet ${at}`);
    if (file[at] !== CR) continue;
    if (file[at + 1] !== LF)
      throw new Error(`a carriage return without a line feed at octet ${at}`);
    lines.push(file.subarray(from, at));
    at += 1;
    from = at + 1;
  }
  if (from !== file.length) throw new Error('the last line has no end');
  for (const line of lines) {
    if (line.length > 75) throw new Error(`a line of ${line.length} octets`);
    new TextDecoder('utf-8', { fatal: true }).decode(line);
  }
  return lines;
};

/** 3.1: a line that begins with a space or tab goes on from the line before, without that octet. */
export const unfolded = (file: Uint8Array): readonly string[] => {
  const joined: number[][] = [];
  for (const line of physicalLines(file)) {
    const before = joined.at(-1);
    if (line[0] === SPACE || line[0] === TAB) {
      if (before === undefined) throw new Error('the first line goes on from none');
      before.push(...line.subarray(1));
    } else joined.push([...line]);
  }
  return joined.map((octets) => {
    for (const octet of octets)
      if ((octet < SPACE && octet !== TAB) || octet === DEL)
        throw new Error(`the control character ${octet}`);
    return new TextDecoder('utf-8', { fatal: true, ignoreBOM: true }).decode(
      new Uint8Array(octets),
    );
  });
};

/** 3.1: name *(";" param) ":" value, a quoted parameter value may hold colons. */
export const property = (line: string): CalendarProperty => {
  let at = 0;
  while (/[A-Za-z0-9-]/.test(line.charAt(at))) at += 1;
  const name = line.slice(0, at);
  if (name === '') throw new Error(`a line without a name: ${line}`);
  const from = at;
  let isQuoted = false;
  while (at < line.length && (isQuoted || line.charAt(at) !== ':')) {
    if (line.charAt(at) === '"') isQuoted = !isQuoted;
    at += 1;
  }
  const parameters = line.slice(from, at);
  if (at === line.length || (parameters !== '' && !parameters.startsWith(';')))
    throw new Error(`a line that is no property: ${line}`);
  return { name: name.toUpperCase(), parameters, value: line.slice(at + 1) };
};

/** 3.3.11: TEXT, its escapes undone. */
export const textOf = (value: string): string => {
  let text = '';
  for (let at = 0; at < value.length; at += 1) {
    const character = value.charAt(at);
    if (character === ';' || character === ',') throw new Error(`unescaped ${character} in TEXT`);
    if (character !== '\\') {
      text += character;
      continue;
    }
    at += 1;
    const escaped = value.charAt(at);
    if (escaped === 'n' || escaped === 'N') text += '\n';
    else if (escaped === '\\' || escaped === ';' || escaped === ',') text += escaped;
    else throw new Error(`a backslash before “${escaped}” in TEXT`);
  }
  return text;
};

/** 3.3.5, form 2: DATE-TIME with UTC time, of a date that exists. */
export const instantOf = (value: string): number => {
  const fields = /^(\d{4})(\d\d)(\d\d)T(\d\d)(\d\d)(\d\d)Z$/.exec(value)?.slice(1).map(Number);
  if (fields === undefined) throw new Error(`${value} is no DATE-TIME with UTC time`);
  const [year = 0, month = 0, day = 0, hour = 0, minute = 0, second = 0] = fields;
  const date = new Date(0);
  date.setUTCFullYear(year, month - 1, day);
  date.setUTCHours(hour, minute, second);
  if (date.getUTCMonth() !== month - 1 || date.getUTCDate() !== day || hour > 23 || minute > 59)
    throw new Error(`${value} is no date and time of the calendar`);
  return date.getTime();
};

/** 3.6.1: of these an event has at most one. */
const AT_MOST_ONCE = [
  'CLASS',
  'CREATED',
  'DESCRIPTION',
  'DTEND',
  'DTSTART',
  'GEO',
  'LAST-MODIFIED',
  'LOCATION',
  'ORGANIZER',
  'PRIORITY',
  'SEQUENCE',
  'STATUS',
  'SUMMARY',
  'TRANSP',
  'UID',
  'DTSTAMP',
  'URL',
];

/** The events of a file that holds one calendar of UTC events, all of it checked. */
export const calendarEvents = (text: string): readonly CalendarEvent[] => {
  const lines = unfolded(new TextEncoder().encode(text)).map(property);
  const outer: CalendarProperty[] = [];
  const events: CalendarProperty[][] = [];
  const open: string[] = [];
  lines.forEach(({ name, parameters, value }, index) => {
    if (name === 'BEGIN') {
      if ((index === 0) !== (value === 'VCALENDAR') || open.length > 1)
        throw new Error(`${value} begins where it cannot`);
      open.push(value);
      if (value === 'VEVENT') events.push([]);
    } else if (name === 'END') {
      if (open.pop() !== value) throw new Error(`${value} ends and did not begin`);
    } else if (open.length === 0) throw new Error(`${name} outside of the calendar`);
    else (open.length === 1 ? outer : (events.at(-1) ?? outer)).push({ name, parameters, value });
    if (open.length === 1 && events.length > 0 && name !== 'END' && name !== 'BEGIN')
      throw new Error(`${name} of the calendar behind its events`);
  });
  if (open.length > 0) throw new Error(`${open.join(' and ')} without an end`);
  if (events.length === 0) throw new Error('a calendar without a component');
  if (valueOf(outer, 'VERSION') !== '2.0') throw new Error('a version other than 2.0');
  textOf(required(outer, 'PRODID'));
  once(outer, ['VERSION', 'PRODID', 'METHOD', 'CALSCALE']);
  const read = events.map((own) => eventOf(own, valueOf(outer, 'METHOD') !== null));
  const uids = new Set(read.map(({ uid }) => uid));
  if (uids.size !== read.length) throw new Error('two events of one UID');
  return read;
};

const eventOf = (own: readonly CalendarProperty[], hasMethod: boolean): CalendarEvent => {
  once(own, AT_MOST_ONCE);
  if (hasMethod) required(own, 'ORGANIZER');
  const startMs = instantOf(required(own, 'DTSTART'));
  const end = valueOf(own, 'DTEND');
  const endMs = end === null ? null : instantOf(end);
  if (endMs !== null && endMs <= startMs)
    throw new Error('an end that is not later than its start');
  const sequence = required(own, 'SEQUENCE');
  if (!/^\d+$/.test(sequence) || Number(sequence) > 2_147_483_647)
    throw new Error(`the SEQUENCE ${sequence}`);
  const status = required(own, 'STATUS');
  if (!['TENTATIVE', 'CONFIRMED', 'CANCELLED'].includes(status))
    throw new Error(`the STATUS ${status}`);
  const transparency = valueOf(own, 'TRANSP') ?? 'OPAQUE';
  if (!['OPAQUE', 'TRANSPARENT'].includes(transparency))
    throw new Error(`the TRANSP ${transparency}`);
  const location = valueOf(own, 'LOCATION');
  return {
    uid: textOf(required(own, 'UID')),
    summary: textOf(required(own, 'SUMMARY')),
    description: textOf(required(own, 'DESCRIPTION')),
    location: location === null ? null : textOf(location),
    startMs,
    endMs,
    stampMs: instantOf(required(own, 'DTSTAMP')),
    modifiedMs: instantOf(required(own, 'LAST-MODIFIED')),
    sequence: Number(sequence),
    status,
    transparency,
    geo: geoOf(valueOf(own, 'GEO')),
  };
};

/** 3.8.1.6: two FLOATs, latitude first, no exponents. */
const geoOf = (value: string | null): readonly [number, number] | null => {
  if (value === null) return null;
  const parts = value.split(';');
  if (parts.length !== 2 || parts.some((part) => !/^[+-]?\d+(?:\.\d+)?$/.test(part)))
    throw new Error(`the GEO ${value}`);
  const [latitude = Number.NaN, longitude = Number.NaN] = parts.map(Number);
  if (!(Math.abs(latitude) <= 90 && Math.abs(longitude) <= 180))
    throw new Error(`the GEO ${value}`);
  return [latitude, longitude];
};

const once = (own: readonly CalendarProperty[], names: readonly string[]): void => {
  for (const name of names)
    if (own.filter((one) => one.name === name).length > 1)
      throw new Error(`${name} more than once`);
};

const valueOf = (own: readonly CalendarProperty[], name: string): string | null =>
  own.find((one) => one.name === name)?.value ?? null;

const required = (own: readonly CalendarProperty[], name: string): string => {
  const value = valueOf(own, name);
  if (value === null) throw new Error(`no ${name}`);
  return value;
};
