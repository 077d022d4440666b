import { OUTLINE_SET_LENGTH } from '../../core/plan/obstacle-schema.ts';
import type { Corner, Obstacle } from '../../core/skyline/obstacle.ts';
import { clockwise, counterClockwise } from '../../core/skyline/simple-rings.ts';
import { fail, ok, type Result } from '../../core/units/result.ts';
import { plainName } from '../waypoints/plain-text.ts';
import { cleanOutline, LATITUDE_FIRST, METRES_INSTEAD } from './clean-outline.ts';
import { comesRound, crownRound, shapesOf, type RawShape } from './feature-shapes.ts';
import { geoJsonFeatures, type RawFeature } from './geojson-features.ts';
import { crownDiameterM, taggedOutline, type TaggedOutline, type Tags } from './outline-tags.ts';
import {
  countHeight,
  countSkipped,
  newTally,
  notesOf,
  skippedOf,
  type OutlineTally,
  type Skipped,
} from './outline-tally.ts';
import { keptProperties } from './outlines-of-set.ts';
import { writeOutlinesGeoJson } from './write-outlines-geojson.ts';

export type ReadOutline = {
  readonly obstacle: Obstacle;
  /** '' for none. */
  readonly name: string;
};

export type OutlineReading = {
  /** In the order in which they are kept; the place in it is an outline's number. */
  readonly outlines: readonly ReadOutline[];
  /** To be kept: a feature collection of RFC 7946 with what was understood and nothing else. */
  readonly text: string;
  readonly skipped: readonly Skipped[];
  /** Sentences. */
  readonly notes: readonly string[];
};

export const MOST_OUTLINES = 20_000;

/**
 * Outlines of buildings, walls and trees out of GeoJSON with the usual tags of open maps, or a
 * sentence that says what was found and what was expected.
 */
export function readOutlinesGeoJson(text: string): Result<OutlineReading, string> {
  const features = geoJsonFeatures(text);
  if (!features.ok) return features;
  if (features.value.length === 0) return fail('Expected outlines, found a file with no feature.');
  const tally = newTally();
  const outlines: ReadOutline[] = [];
  for (const feature of features.value) {
    for (const shape of shapesOf(feature.geometry)) addOutlines(outlines, tally, feature, shape);
    if (outlines.length > MOST_OUTLINES)
      return fail(
        `Found more than ${MOST_OUTLINES.toLocaleString('en')} outlines, expected at most so many. Choose a smaller area.`,
      );
  }
  const wrongUnit = wrongUnitSentence(tally, outlines.length);
  if (wrongUnit !== null) return fail(wrongUnit);
  const skipped = skippedOf(tally);
  if (outlines.length === 0)
    return fail(
      `Expected buildings, walls or trees, found none that can be used: ${skipped
        .slice(0, 3)
        .map(({ count, why }) => `${count} ${why}`)
        .join('; ')}.`,
    );
  const kept = writeOutlinesGeoJson(outlines.map(({ obstacle, name }) => ({ ...obstacle, name })));
  if (kept.length > OUTLINE_SET_LENGTH)
    return fail(
      `The outlines would take ${Math.ceil(kept.length / 1e5) / 10} MB of the shoot, expected at most ${OUTLINE_SET_LENGTH / 1e6} MB. Choose a smaller area.`,
    );
  return ok({ outlines, text: kept, skipped, notes: notesOf(tally) });
}

function addOutlines(
  outlines: ReadOutline[],
  tally: OutlineTally,
  { properties }: RawFeature,
  raw: RawShape | string,
): void {
  if (typeof raw === 'string') return countSkipped(tally, raw);
  const line = raw.rings[0] ?? [];
  const isRound = raw.shape === 'line' && comesRound(line);
  const told = toldOutline(properties, raw, isRound);
  if (typeof told === 'string') return countSkipped(tally, told);

  const isRing = raw.shape !== 'line' || isRound;
  const crown = raw.shape === 'point' ? crownDiameterM(properties) : null;
  const clean = cleanOutline(crown === null ? line : crownRound(line[0], crown.diameterM), {
    isRing,
  });
  if (typeof clean === 'string') return countSkipped(tally, clean);
  const holes = raw.shape === 'area' ? holesFrom(raw.rings.slice(1)) : { kept: [], lost: 0 };
  const isCut = clean.pieces.length > 1;
  const keepsHoles = !isCut && !clean.crossesItself && told.isFilled && holes.kept.length > 0;

  if (told.tagged !== null) countHeight(tally, told.tagged);
  if (crown?.isAssumed === true) tally.assumedCrowns += 1;
  if (clean.crossesItself) tally.crossing += 1;
  if (clean.wasThinned) tally.thinned += 1;
  if (isCut) tally.cut += 1;
  tally.lostHoles += holes.lost + (told.isFilled && !keepsHoles ? holes.kept.length : 0);

  const written = properties['name'];
  const name = plainName(typeof written === 'string' ? written : null) ?? '';
  for (const outline of clean.pieces)
    outlines.push({
      name,
      obstacle: {
        ...told.facts,
        closed: isRing && outline.length > 2,
        outline: isRing && told.facts.kind !== 'wall' ? counterClockwise(outline) : outline,
        ...(keepsHoles ? { holes: holes.kept.map(clockwise) } : {}),
      },
    });
}

type ToldOutline = {
  readonly facts: Omit<Obstacle, 'outline' | 'closed' | 'holes'>;
  readonly isFilled: boolean;
  /** Null where this project wrote the feature itself. */
  readonly tagged: TaggedOutline | null;
};

function toldOutline(tags: Tags, { shape }: RawShape, isRound: boolean): ToldOutline | string {
  const own = shape === 'point' ? null : keptProperties(tags);
  if (own !== null) {
    const { name: _, ...facts } = own;
    return { facts, isFilled: shape === 'area', tagged: null };
  }
  const tagged = taggedOutline(tags, isRound && isAreaByTags(tags) ? 'area' : shape);
  if (typeof tagged === 'string') return tagged;
  const { kind, heightM, crownBaseM, passesInLeaf, passesBare, footElevationM, isFilled } = tagged;
  return {
    facts: { kind, heightM, crownBaseM, passesInLeaf, passesBare, footElevationM },
    isFilled,
    tagged,
  };
}

/** Things that a closed line means as an area. */
const isAreaByTags = (tags: Tags): boolean =>
  ['building', 'building:part', 'man_made', 'landuse'].some(
    (key) => typeof tags[key] === 'string',
  ) ||
  tags['natural'] === 'wood' ||
  tags['area'] === 'yes';

function holesFrom(rings: readonly (readonly unknown[])[]): {
  readonly kept: readonly (readonly Corner[])[];
  readonly lost: number;
} {
  const kept = rings.flatMap((ring) => {
    const clean = cleanOutline(ring, { isRing: true });
    const piece = typeof clean === 'string' || clean.crossesItself ? undefined : clean.pieces;
    return piece?.length === 1 ? piece : [];
  });
  return { kept, lost: rings.length - kept.length };
}

/** Where most of a file lies off the globe, its coordinates are of another kind. */
function wrongUnitSentence(tally: OutlineTally, understood: number): string | null {
  const metres = tally.skipped.get(METRES_INSTEAD) ?? 0;
  const swapped = tally.skipped.get(LATITUDE_FIRST) ?? 0;
  if (metres + swapped <= understood) return null;
  return metres >= swapped
    ? 'The coordinates look like metres of a map projection; expected degrees, longitude first. Export the outlines in EPSG:4326.'
    : 'Found latitudes beyond 90°: latitude seems to come first; expected longitude, then latitude, in degrees.';
}
