import type { Waypoint } from '../../core/plan/waypoint.ts';
import { collectWaypoints, type WrittenWaypoint } from './collect-waypoints.ts';
import { angleText, decimalText } from './decimal-text.ts';
import { markupFromText, textFromMarkup } from './plain-text.ts';
import type { ReadWaypoints, Skipped, WaypointFormat } from './waypoint-format.ts';
import { childElement, childText, elementsBelow, xmlDocument } from './xml-document.ts';
import { xmlLine, xmlText } from './xml-text.ts';

const readText = (text: string): ReadWaypoints => {
  const document = xmlDocument(text, { root: 'kml', label: 'KML' });
  if (!document.ok) return document;
  const placemarks = elementsBelow(document.value, 'Placemark').map((element, index) => ({
    element,
    place: `placemark ${index + 1}`,
    points: elementsBelow(element, 'Point'),
  }));
  const written = placemarks.flatMap(({ element, place, points }) =>
    points.map((point) => writtenPoint(element, point, place)),
  );
  return collectWaypoints({
    of: 'the KML file',
    written,
    skipped: [
      ...placemarks.filter(({ points }) => points.length === 0).map(pointless),
      ...otherFeatures(document.value),
    ],
    notes: written.some(({ bearing }) => bearing !== null)
      ? ['Bearings are the headings of the views saved with the placemarks.']
      : [],
  });
};

const writtenPoint = (placemark: Element, point: Element, place: string): WrittenWaypoint => {
  const tuple = (childText(point, 'coordinates') ?? '')
    .replace(/\s*,\s*/g, ',')
    .split(/\s+/)[0]
    ?.split(',');
  const view = childElement(placemark, 'LookAt') ?? childElement(placemark, 'Camera');
  const stamp = childElement(placemark, 'TimeStamp');
  return {
    place,
    name: childText(placemark, 'name'),
    latitude: tuple?.[1] ?? null,
    longitude: tuple?.[0] ?? null,
    elevation: seaLevelAltitude(childText(point, 'altitudeMode'), tuple?.[2] ?? null),
    note: textFromMarkup(childText(placemark, 'description') ?? ''),
    bearing: view && childText(view, 'heading'),
    time: stamp && childText(stamp, 'when'),
  };
};

/** Above sea level only where the mode says so; without a mode most programs mean it, but write 0 for unknown. */
const seaLevelAltitude = (mode: string | null, altitude: string | null): string | null => {
  if (mode === 'absolute') return altitude;
  return mode === null && Number(altitude) !== 0 ? altitude : null;
};

const GEOMETRIES = ['LineString', 'LinearRing', 'Polygon', 'Track', 'Model'] as const;

const pointless = ({ element, place }: { element: Element; place: string }): Skipped => {
  const found = GEOMETRIES.find((name) => elementsBelow(element, name).length > 0);
  return {
    what: childText(element, 'name')?.slice(0, 120) ?? place,
    why: `Found ${found === undefined ? 'no place' : `a ${found}`}; expected a Point.`,
  };
};

const OTHER_FEATURES = [
  ['NetworkLink', 'It points to another file, which is not fetched.'],
  ['GroundOverlay', 'A picture laid on the ground is no point.'],
  ['PhotoOverlay', 'A picture in the view is no point.'],
  ['ScreenOverlay', 'A picture on the screen is no point.'],
] as const;

const otherFeatures = (document: Document): readonly Skipped[] =>
  OTHER_FEATURES.flatMap(([name, why]) => {
    const count = elementsBelow(document, name).length;
    return count === 0 ? [] : [{ what: `${count} × ${name}`, why }];
  });

/** KML 2.2, its elements in the order its schema demands; the view saved with a placemark looks along its bearing. */
const write = (title: string, waypoints: readonly Waypoint[]): string =>
  `<?xml version="1.0" encoding="UTF-8"?>
<kml xmlns="http://www.opengis.net/kml/2.2">
  <Document>
    <name>${xmlText(title)}</name>
${waypoints.map(placemarkElement).join('')}  </Document>
</kml>
`;

const placemarkElement = (waypoint: Waypoint): string => {
  const { elevationM, takenAtMs, bearingDeg } = waypoint;
  const longitude = angleText(waypoint.longitudeDeg);
  const latitude = angleText(waypoint.latitudeDeg);
  const altitude = elevationM === null ? null : decimalText(elevationM, 2);
  return [
    '    <Placemark>\n',
    xmlLine('      ', 'name', waypoint.name),
    xmlLine('      ', 'description', markupFromText(waypoint.note)),
    bearingDeg === null
      ? ''
      : [
          '      <LookAt>\n',
          xmlLine('        ', 'longitude', longitude),
          xmlLine('        ', 'latitude', latitude),
          xmlLine('        ', 'altitude', altitude ?? '0'),
          xmlLine('        ', 'heading', decimalText(bearingDeg, 3)),
          xmlLine('        ', 'tilt', '80'),
          xmlLine('        ', 'range', '150'),
          xmlLine('        ', 'altitudeMode', altitude === null ? 'clampToGround' : 'absolute'),
          '      </LookAt>\n',
        ].join(''),
    takenAtMs === null
      ? ''
      : `      <TimeStamp>\n${xmlLine('        ', 'when', new Date(takenAtMs).toISOString())}      </TimeStamp>\n`,
    '      <Point>\n',
    xmlLine('        ', 'altitudeMode', altitude === null ? null : 'absolute'),
    xmlLine('        ', 'coordinates', [longitude, latitude, altitude].filter(Boolean).join(',')),
    '      </Point>\n',
    '    </Placemark>\n',
  ].join('');
};

export const kml = {
  id: 'kml',
  label: 'KML',
  extensions: ['.kml'],
  mediaType: 'application/xml',
  readText,
  write,
} as const satisfies WaypointFormat;
