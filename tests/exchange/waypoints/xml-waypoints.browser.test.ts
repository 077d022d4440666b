import { gpx as gpxToGeoJson, kml as kmlToGeoJson } from '@tmcw/togeojson';
import fc from 'fast-check';
import { strToU8, zipSync } from 'fflate';
import { describe, expect, test } from 'vitest';

import type { Waypoint } from '../../../src/core/plan/waypoint.ts';
import { decodedText } from '../../../src/exchange/waypoints/decoded-text.ts';
import { gpx } from '../../../src/exchange/waypoints/gpx.ts';
import { kml } from '../../../src/exchange/waypoints/kml.ts';
import { readWaypointFile } from '../../../src/exchange/waypoints/read-waypoints.ts';
import type {
  ReadWaypoints,
  WaypointReading,
} from '../../../src/exchange/waypoints/waypoint-format.ts';
import { defined } from '../../support/defined.ts';
import { expectSameWaypoints } from '../../support/expect-same-waypoints.ts';
import { waypointsArbitrary } from '../../support/waypoint-arbitrary.ts';

const value = (read: ReadWaypoints): WaypointReading => {
  if (!read.ok) throw new Error(read.problem);
  return read.value;
};

const problem = (read: ReadWaypoints): string => {
  if (read.ok) throw new Error('read');
  return read.problem;
};

const parsed = (text: string): Document => {
  const document = new DOMParser().parseFromString(text, 'application/xml');
  expect(document.getElementsByTagName('parsererror').length).toBe(0);
  return document;
};

/** By the GPX 1.1 schema: a receiver's log with waypoints, a route and a track, its optional fields in the schema's order. */
const GPX_LOG = `<?xml version="1.0" encoding="UTF-8" standalone="no"?>
<gpx xmlns="http://www.topografix.com/GPX/1/1" version="1.1" creator="by hand">
  <metadata><time>2027-05-01T08:00:00Z</time></metadata>
  <wpt lat="45.6503" lon="13.7571">
    <ele>3.2</ele><time>2027-05-01T16:30:00Z</time><magvar>3.5</magvar>
    <name>Pier &amp; head</name><cmt>Steps wet</cmt><desc><![CDATA[<p>Gate at <b>six</b></p>]]></desc>
    <sym>Flag</sym>
    <extensions><other xmlns="urn:of:somebody">1</other></extensions>
  </wpt>
  <wpt lat="45.66" lon="181"><name>Too far</name></wpt>
  <wpt lat="95" lon="13"/>
  <wpt lat="45,6" lon="13,7"><name>Commas</name></wpt>
  <rte><rtept lat="1" lon="2"/></rte>
  <trk><trkseg><trkpt lat="1" lon="2"/><trkpt lat="1" lon="3"/></trkseg></trk>
</gpx>`;

describe('GPX in', () => {
  test('waypoints with all that the schema lets them say', () => {
    const read = value(gpx.readText(GPX_LOG));
    expect(read.waypoints).toEqual([
      {
        name: 'Pier & head',
        latitudeDeg: 45.6503,
        longitudeDeg: 13.7571,
        elevationM: 3.2,
        note: 'Gate at six\nSteps wet',
        bearingDeg: null,
        // From 1970 to 2027-05-01 there are 20,939 days.
        takenAtMs: (20_939 * 24 + 16.5) * 3_600_000,
      },
    ]);
    expect(read.skipped).toEqual([
      { what: 'Too far', why: 'Found a longitude of 181°; expected −180° to 180°, east positive.' },
      {
        what: 'waypoint 3',
        why: 'Found a latitude of 95°; expected −90° to 90°, north positive. Latitude and longitude may be swapped.',
      },
      { what: 'Commas', why: 'Found “45,6” as latitude; expected a number of degrees.' },
    ]);
    expect(read.notes).toEqual(['1 × route point left out.', '2 × track point left out.']);
  });

  test('GPX 1.0, its namespace another, and without any namespace', () => {
    for (const head of ['xmlns="http://www.topografix.com/GPX/1/0" version="1.0"', ''])
      expect(
        value(gpx.readText(`<gpx ${head}><wpt lat="1" lon="2"><name>A</name></wpt></gpx>`))
          .waypoints,
      ).toMatchObject([{ name: 'A', latitudeDeg: 1, longitudeDeg: 2 }]);
  });

  test('without waypoints the points of the route are taken, and that is said', () => {
    const read = value(
      gpx.readText('<gpx><rte><rtept lat="1" lon="2"><name>A</name></rtept></rte></gpx>'),
    );
    expect(read.waypoints).toMatchObject([{ name: 'A' }]);
    expect(read.notes).toEqual(['The file has no waypoints: the points of its route are taken.']);
  });

  test.each([
    ['<gpx><trk><trkseg><trkpt lat="1" lon="2"/></trkseg></trk></gpx>', /only a track of 1 points/],
    ['<gpx></gpx>', /found none in the GPX file/],
    [GPX_LOG.slice(0, 400), /cut short: it does not end with <\/gpx>/],
    ['<gpx><wpt lat="1" lon="2"><name>A & B</name></wpt></gpx>', /damaged: it is not well-formed/],
    ['<gpx><wpt lat="1" lon="2"><name>&nbsp;</name></wpt></gpx>', /damaged/],
    [`<gpx>${'<a>'.repeat(20_000)}`, /cut short/],
    ['<gpx><wpt lat="NaN" lon="2"/></gpx>', /“NaN” as latitude/],
  ])('what is wrong with it gets a sentence: %#', (text, words) => {
    expect(problem(gpx.readText(text))).toMatch(words);
  });

  test('5,001 waypoints: one too many, and that is said', () => {
    const text = `<gpx>${'<wpt lat="1" lon="2"/>'.repeat(5001)}</gpx>`;
    const read = value(gpx.readText(text));
    expect(read.waypoints.length).toBe(5000);
    expect(read.notes[0]).toMatch(/holds 5001 waypoints.*first 5000.*1 after them/);
  });
});

/** By the KML 2.2 standard: folders within folders, a saved view, kinds of placemark that are no point. */
const KML_TOUR = `<?xml version="1.0" encoding="UTF-8"?>
<kml xmlns="http://www.opengis.net/kml/2.2">
<Document>
  <name>Scouting</name>
  <Folder><name>Harbour</name><Folder>
    <Placemark id="a">
      <name>Pier head</name>
      <description><![CDATA[<div>Gate<br>six</div><script>alert(1)</script>]]></description>
      <LookAt><longitude>13.7571</longitude><latitude>45.6503</latitude><altitude>0</altitude>
        <heading>-60</heading><tilt>70</tilt><range>200</range></LookAt>
      <TimeStamp><when>2027-05-01T18:30:00+02:00</when></TimeStamp>
      <Point><altitudeMode>absolute</altitudeMode><coordinates>13.7571,45.6503,3.5</coordinates></Point>
    </Placemark>
    <Placemark><name>Standing</name><Point>
      <altitudeMode>relativeToGround</altitudeMode><coordinates> 13.8, 45.7, 2 </coordinates></Point></Placemark>
  </Folder></Folder>
  <Placemark><name>Two</name><Camera><heading>30</heading></Camera><MultiGeometry>
    <Point><coordinates>13.1,45.1</coordinates></Point><Point><coordinates>13.2,45.2,0</coordinates></Point>
  </MultiGeometry></Placemark>
  <Placemark><name>Path</name><LineString><coordinates>13,45 14,46</coordinates></LineString></Placemark>
  <Placemark><name>Nothing</name></Placemark>
  <NetworkLink><Link><href>http://example.invalid/x.kml</href></Link></NetworkLink>
</Document></kml>`;

describe('KML in', () => {
  test('points of every folder, with the heading of the saved view as bearing', () => {
    const read = value(kml.readText(KML_TOUR));
    const plain = { note: '', takenAtMs: null, elevationM: null };
    expect(read.waypoints).toEqual([
      {
        name: 'Pier head',
        latitudeDeg: 45.6503,
        longitudeDeg: 13.7571,
        elevationM: 3.5,
        note: 'Gate\nsix',
        bearingDeg: 300,
        takenAtMs: (20_939 * 24 + 16.5) * 3_600_000,
      },
      { ...plain, name: 'Standing', latitudeDeg: 45.7, longitudeDeg: 13.8, bearingDeg: null },
      { ...plain, name: 'Two', latitudeDeg: 45.1, longitudeDeg: 13.1, bearingDeg: 30 },
      { ...plain, name: 'Two', latitudeDeg: 45.2, longitudeDeg: 13.2, bearingDeg: 30 },
    ]);
    expect(read.skipped).toEqual([
      { what: 'Path', why: 'Found a LineString; expected a Point.' },
      { what: 'Nothing', why: 'Found no place; expected a Point.' },
      { what: '1 × NetworkLink', why: 'It points to another file, which is not fetched.' },
    ]);
    expect(read.notes).toEqual([
      'Bearings are the headings of the views saved with the placemarks.',
    ]);
  });

  test.each([
    [KML_TOUR.slice(0, 900), /cut short: it does not end with <\/kml>/],
    ['<kml><Document/></kml>', /found none in the KML file/],
    ['<kml><Placemark><Point><coordinates>181,45</coordinates></Point></Placemark></kml>', /181°/],
    ['<kml><Placemark><Point><coordinates/></Point></Placemark></kml>', /Found no latitude/],
    ['<gpx/>', /Expected a KML file, found XML that begins with <gpx>/],
  ])('what is wrong with it gets a sentence: %#', (text, words) => {
    expect(problem(kml.readText(text))).toMatch(words);
  });

  test('out of an archive, doc.kml before others, and a plain one named as an archive', async () => {
    const zipped = zipSync({
      'files/more.kml': strToU8('<kml/>'),
      'doc.kml': strToU8(KML_TOUR),
    });
    const read = value(await readWaypointFile(new File([zipped], 'tour.kmz'), { near: null }));
    expect(read.waypoints.length).toBe(4);
    expect(read.notes[0]).toBe('Read doc.kml; 1 × other KML file left out.');
    const plain = value(await readWaypointFile(new File([KML_TOUR], 'tour.kmz'), { near: null }));
    expect(plain.notes[0]).toBe('Named as KMZ, but it is KML and was read as that.');
  });
});

test('nothing of a hostile description runs, and none of it stays as markup', () => {
  const text = `<kml><Placemark><name>&lt;img src=x onerror="window.hit=1"&gt;</name>
    <description><![CDATA[<svg onload="window.hit=1"><script>window.hit=1</script>note</svg>]]></description>
    <x xmlns="http://www.w3.org/1999/xhtml"><script>window.hit=1</script></x>
    <Point><coordinates>13,45</coordinates></Point></Placemark></kml>`;
  const [waypoint] = value(kml.readText(text)).waypoints;
  expect(waypoint).toMatchObject({ name: null, note: 'note' });
  expect(Reflect.get(window, 'hit')).toBeUndefined();
});

test('an encoding declared for XML and a UTF-16 mark both reach the parser as text', async () => {
  const text =
    '<?xml version="1.0" encoding="UTF-16"?><gpx><wpt lat="1" lon="2"><name>Größe</name></wpt></gpx>';
  const units = Uint16Array.from(`\uFEFF${text}`, (one) => one.charCodeAt(0));
  const read = value(await readWaypointFile(new File([units], 'x.gpx'), { near: null }));
  expect(read.waypoints[0]?.name).toBe('Größe');
  // 0x80 is € in Windows-1252.
  expect(decodedText(new Uint8Array([0x80]))).toMatchObject({ value: { text: '€' } });
});

/** What an independent reader has for a waypoint. */
type Feature = ReturnType<typeof gpxToGeoJson>['features'][number];

const positionOf = ({
  geometry,
}: {
  readonly geometry: Feature['geometry'] | null;
}): readonly number[] => (geometry?.type === 'Point' ? geometry.coordinates : []);

function expectAsWritten(features: readonly Feature[], waypoints: readonly Waypoint[]): void {
  expect(features.length).toBe(waypoints.length);
  features.forEach((feature, index) => {
    const waypoint = defined(waypoints[index]);
    const [longitudeDeg = NaN, latitudeDeg = NaN, elevationM = null] = positionOf(feature);
    expect(Math.abs(latitudeDeg - waypoint.latitudeDeg)).toBeLessThan(5.1e-8);
    expect(Math.abs(((longitudeDeg - waypoint.longitudeDeg + 540) % 360) - 180)).toBeLessThan(
      5.1e-8,
    );
    expect(elevationM === null).toBe(waypoint.elevationM === null);
    expect(Math.abs((elevationM ?? 0) - (waypoint.elevationM ?? 0))).toBeLessThan(0.0051);
    expect(feature.properties?.['name'] ?? null).toBe(waypoint.name);
  });
}

const childNames = (element: Element): readonly string[] =>
  [...element.children].map(({ localName }) => localName);

/** The names in the order in which a schema's sequence has them. */
const inSequence = (names: readonly string[], sequence: readonly string[]): readonly string[] =>
  sequence.filter((name) => names.includes(name));

describe('GPX out', () => {
  test('is read the same by us, and by an independent reader', () => {
    fc.assert(
      fc.property(waypointsArbitrary, (waypoints) => {
        const text = gpx.write('A & <b>', waypoints);
        expectSameWaypoints(value(gpx.readText(text)).waypoints, waypoints);
        const { features } = gpxToGeoJson(parsed(text));
        expectAsWritten(features, waypoints);
        features.forEach(({ properties }, index) => {
          expect(properties?.['desc'] ?? '').toBe(waypoints[index]?.note);
        });
      }),
    );
  });

  test('keeps to the schema of GPX 1.1: namespace, order of elements, longitude below 180', () => {
    fc.assert(
      fc.property(waypointsArbitrary, (waypoints) => {
        const root = parsed(gpx.write('Shoot', waypoints)).documentElement;
        expect([root.namespaceURI, root.localName, root.getAttribute('version')]).toEqual([
          'http://www.topografix.com/GPX/1/1',
          'gpx',
          '1.1',
        ]);
        const [metadata, ...points] = [...root.children];
        expect(metadata?.localName).toBe('metadata');
        for (const point of points) {
          expect([point.localName, point.namespaceURI]).toEqual(['wpt', root.namespaceURI]);
          expect(Number(point.getAttribute('lon'))).toBeLessThan(180);
          expect(point.getAttribute('lon')).toMatch(/^-?\d+(\.\d+)?$/);
          const names = childNames(point);
          expect(names).toEqual(inSequence(names, ['ele', 'time', 'name', 'desc', 'extensions']));
        }
      }),
      { numRuns: 30 },
    );
  });

  test('longitude 180 leaves as −180, the same meridian', () => {
    const [waypoint] = value(gpx.readText('<gpx><wpt lat="1" lon="180"/></gpx>')).waypoints;
    expect(gpx.write('x', [defined(waypoint)])).toContain('lon="-180"');
  });
});

describe('KML out', () => {
  test('is read the same by us, and by an independent reader', () => {
    fc.assert(
      fc.property(waypointsArbitrary, (waypoints) => {
        const text = kml.write('A & <b>', waypoints);
        expectSameWaypoints(value(kml.readText(text)).waypoints, waypoints);
        const { features } = kmlToGeoJson(parsed(text));
        expectAsWritten(features as readonly Feature[], waypoints);
      }),
    );
  });

  test('keeps to the standard: namespace, order of elements, the view looking along the bearing', () => {
    fc.assert(
      fc.property(waypointsArbitrary, (waypoints) => {
        const root = parsed(kml.write('Shoot', waypoints)).documentElement;
        expect([root.namespaceURI, root.localName]).toEqual([
          'http://www.opengis.net/kml/2.2',
          'kml',
        ]);
        const placemarks = [...root.getElementsByTagName('Placemark')];
        placemarks.forEach((placemark, index) => {
          const names = childNames(placemark);
          expect(names).toEqual(
            inSequence(names, ['name', 'description', 'LookAt', 'TimeStamp', 'Point']),
          );
          const view = placemark.getElementsByTagName('LookAt')[0];
          const { bearingDeg } = defined(waypoints[index]);
          expect(view === undefined).toBe(bearingDeg === null);
          if (view === undefined) return;
          expect(childNames(view)).toEqual([
            'longitude',
            'latitude',
            'altitude',
            'heading',
            'tilt',
            'range',
            'altitudeMode',
          ]);
        });
      }),
      { numRuns: 30 },
    );
  });
});
