import type { GeoPoint } from '../../core/place/geo-point.ts';
import { fail, ok, type Result } from '../../core/units/result.ts';
import { checkedDay, type DayEvent } from '../day-event.ts';
import { localTimeText } from '../local-time-text.ts';
import { plainLine, plainLines } from '../plain-lines.ts';
import { angleText, decimalText } from './decimal-text.ts';
import { xmlLine, xmlText } from './xml-text.ts';

/**
 * The day as a route (GPX 1.1), its points in the order in which they are come to, each with the
 * UTC instant of its first event. Events that follow one another at one place are one point; those
 * without a position, such as a drive, are none.
 */
export function writeGpxRoute({
  title,
  events,
}: {
  readonly title: string;
  readonly events: readonly DayEvent[];
}): Result<string, string> {
  const day = checkedDay(events);
  if (!day.ok) return day;
  const stops = stopsOf(day.value);
  if (stops.length === 0)
    return fail('The day has no entry with a position: expected one at least, for a route.');
  return ok(`<?xml version="1.0" encoding="UTF-8"?>
<gpx version="1.1" creator="Undersky" xmlns="http://www.topografix.com/GPX/1/1" xmlns:xsi="http://www.w3.org/2001/XMLSchema-instance" xsi:schemaLocation="http://www.topografix.com/GPX/1/1 http://www.topografix.com/GPX/1/1/gpx.xsd">
  <metadata>
    <name>${xmlText(plainLine(title))}</name>
  </metadata>
  <rte>
    <name>${xmlText(plainLine(title))}</name>
${stops.map(routePoint).join('')}  </rte>
</gpx>
`);
}

type Stop = { readonly position: GeoPoint; readonly events: readonly DayEvent[] };

const stopsOf = (day: readonly DayEvent[]): readonly Stop[] => {
  const stops: Stop[] = [];
  for (const event of day) {
    const { position } = event;
    if (position === null) continue;
    const before = stops.at(-1);
    if (
      before !== undefined &&
      before.events[0]?.place === event.place &&
      same(before.position, position)
    )
      stops.splice(-1, 1, { position, events: [...before.events, event] });
    else stops.push({ position, events: [event] });
  }
  return stops;
};

const same = (one: GeoPoint, other: GeoPoint): boolean =>
  one.latitudeDeg === other.latitudeDeg && one.longitudeDeg === other.longitudeDeg;

/** Its elements in the order that the schema demands. */
const routePoint = ({ position, events }: Stop): string => {
  const longitude = angleText(position.longitudeDeg);
  const [first] = events;
  if (first === undefined) return '';
  return [
    // The schema's longitudes end before 180.
    `    <rtept lat="${angleText(position.latitudeDeg)}" lon="${longitude === '180' ? '-180' : longitude}">\n`,
    xmlLine(
      '      ',
      'ele',
      position.elevationM === undefined ? null : decimalText(position.elevationM, 2),
    ),
    xmlLine('      ', 'time', new Date(first.startMs).toISOString()),
    xmlLine('      ', 'name', plainLine(first.place === '' ? first.title : first.place)),
    xmlLine('      ', 'desc', events.map(whatThen).join('\n')),
    '    </rtept>\n',
  ].join('');
};

const whatThen = (event: DayEvent): string =>
  [`${localTimeText(event)}: ${plainLine(event.title)}`, plainLines(event.description).trim()]
    .filter((text) => text !== '')
    .join('\n');
