import { describe, expect, test } from 'vitest';

import { xmlProlog } from '../../../src/exchange/waypoints/xml-prolog.ts';

describe('what a text is, before anything parses it', () => {
  test.each([
    ['<gpx version="1.1">', 'gpx', null, false],
    ['\uFEFF<?xml version="1.0"?>\n<!-- by hand --> <gpx>', 'gpx', null, false],
    ['<k:kml xmlns:k="http://www.opengis.net/kml/2.2">', 'kml', null, false],
    ['<!DOCTYPE html><html>', 'html', 'html', false],
    ['<!doctype gpx SYSTEM "gpx.dtd"><gpx>', 'gpx', 'gpx', false],
    ['<!DOCTYPE gpx [<!ENTITY a "b">]><gpx>', null, 'gpx', true],
    ['<?xml version="1.0"?><!-- x --><!DOCTYPE kml\n[\n<!ENTITY a "b">', null, 'kml', true],
    ['<!-- never closed', null, null, false],
  ])('%s', (text, root, documentType, declares) => {
    expect(xmlProlog(text)).toEqual({ root, documentType, declares });
  });

  test('text that does not begin with a tag is no XML', () => {
    expect(xmlProlog('45.65, 13.76')).toBeNull();
    expect(xmlProlog('{"a": "<gpx>"}')).toBeNull();
  });

  test('a document type quoted inside a description does not count', () => {
    expect(xmlProlog('<kml><description><![CDATA[<!DOCTYPE html [')).toMatchObject({
      root: 'kml',
      declares: false,
    });
  });
});
