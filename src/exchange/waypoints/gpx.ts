import type { Waypoint } from '../../core/plan/waypoint.ts';
import { fail } from '../../core/units/result.ts';
import { collectWaypoints, type WrittenWaypoint } from './collect-waypoints.ts';
import { angleText, decimalText } from './decimal-text.ts';
import { plainNote } from './plain-text.ts';
import type { ReadWaypoints, WaypointFormat } from './waypoint-format.ts';
import { childElement, childText, elementsBelow, xmlDocument } from './xml-document.ts';
import { xmlLine, xmlText } from './xml-text.ts';

/** GPX has no field for a bearing; its schema leaves room for elements of other namespaces. */
const OURS = 'urn:x-undersky:waypoint';

const readText = (text: string): ReadWaypoints => {
  const document = xmlDocument(text, { root: 'gpx', label: 'GPX' });
  if (!document.ok) return document;
  const waypoints = elementsBelow(document.value, 'wpt');
  const routePoints = elementsBelow(document.value, 'rtept');
  const trackCount = elementsBelow(document.value, 'trkpt').length;
  if (waypoints.length === 0 && routePoints.length === 0)
    return fail(
      trackCount === 0
        ? 'Expected waypoints, found none in the GPX file.'
        : `Expected waypoints, found only a track of ${trackCount} points in the GPX file.`,
    );
  const fromRoute = waypoints.length === 0;
  return collectWaypoints({
    of: 'the GPX file',
    written: (fromRoute ? routePoints : waypoints).map((element, index) =>
      writtenPoint(element, `${fromRoute ? 'route point' : 'waypoint'} ${index + 1}`),
    ),
    notes: [
      ...(fromRoute ? ['The file has no waypoints: the points of its route are taken.'] : []),
      ...(!fromRoute && routePoints.length > 0
        ? [`${routePoints.length} × route point left out.`]
        : []),
      ...(trackCount > 0 ? [`${trackCount} × track point left out.`] : []),
    ],
  });
};

const writtenPoint = (element: Element, place: string): WrittenWaypoint => {
  const time = childText(element, 'time');
  return {
    place,
    name: childText(element, 'name'),
    latitude: element.getAttribute('lat'),
    longitude: element.getAttribute('lon'),
    elevation: childText(element, 'ele'),
    note: [
      ...new Set([plainNote(childText(element, 'desc')), plainNote(childText(element, 'cmt'))]),
    ]
      .filter((text) => text !== '')
      .join('\n'),
    bearing: ourBearing(element),
    // Times of GPX are UTC, whether or not they say so.
    time: time !== null && /T[\d:.]+$/.test(time) ? `${time}Z` : time,
  };
};

const ourBearing = (element: Element): string | null => {
  const extensions = childElement(element, 'extensions');
  const bearing = extensions?.getElementsByTagNameNS(OURS, 'bearingDeg')[0];
  return bearing?.textContent ?? null;
};

/** GPX 1.1, its elements in the order its schema demands. */
const write = (title: string, waypoints: readonly Waypoint[]): string =>
  `<?xml version="1.0" encoding="UTF-8"?>
<gpx version="1.1" creator="Undersky" xmlns="http://www.topografix.com/GPX/1/1" xmlns:xsi="http://www.w3.org/2001/XMLSchema-instance" xsi:schemaLocation="http://www.topografix.com/GPX/1/1 http://www.topografix.com/GPX/1/1/gpx.xsd">
  <metadata>
    <name>${xmlText(title)}</name>
  </metadata>
${waypoints.map(waypointElement).join('')}</gpx>
`;

const waypointElement = (waypoint: Waypoint): string => {
  const longitude = angleText(waypoint.longitudeDeg);
  const { elevationM, takenAtMs, bearingDeg } = waypoint;
  return [
    // The schema's longitudes end before 180.
    `  <wpt lat="${angleText(waypoint.latitudeDeg)}" lon="${longitude === '180' ? '-180' : longitude}">\n`,
    xmlLine('    ', 'ele', elevationM === null ? null : decimalText(elevationM, 2)),
    xmlLine('    ', 'time', takenAtMs === null ? null : new Date(takenAtMs).toISOString()),
    xmlLine('    ', 'name', waypoint.name),
    xmlLine('    ', 'desc', waypoint.note),
    bearingDeg === null
      ? ''
      : `    <extensions>\n      <u:bearingDeg xmlns:u="${OURS}">${decimalText(bearingDeg, 3)}</u:bearingDeg>\n    </extensions>\n`,
    '  </wpt>\n',
  ].join('');
};

export const gpx = {
  id: 'gpx',
  label: 'GPX',
  extensions: ['.gpx'],
  mediaType: 'application/gpx+xml',
  readText,
  write,
} as const satisfies WaypointFormat;
