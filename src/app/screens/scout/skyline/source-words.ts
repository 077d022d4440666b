import type { Spot } from '../../../../core/plan/shoot.ts';
import { formatDate } from '../../../../core/units/civil-time.ts';
import { movedSinceM, type ObstacleCounts } from './skyline-sources.ts';

/** '64 %', 'under 1 %', 'nothing'. */
export function shareText(share: number): string {
  if (share <= 0) return 'nothing';
  return share < 0.01 ? 'under 1 %' : `${Math.round(share * 100)} %`;
}

const decides = (share: number): string => `decides ${shareText(share)} of the round`;

const datedText = (origin: string, dated: string): string =>
  [
    origin === '' ? 'origin not noted' : origin,
    dated === '' ? 'date not noted' : formatDate(dated, 'en-GB'),
  ].join(', ');

export const terrainLine = ({ terrain }: Spot, share: number): string =>
  terrain === null
    ? 'none: open elevation files, or ask the network for elevation'
    : `${datedText(terrain.origin, terrain.dated)}; ${decides(share)}`;

/** Nearer than this the heights are the same sample. */
const NOT_MOVED_M = 5;

/** What else must be known of the terrain. */
export function terrainNotes(spot: Spot): readonly string[] {
  if (spot.terrain === null) return [];
  const { voidShare } = spot.terrain;
  const movedM = movedSinceM(spot) ?? 0;
  return [
    movedM < NOT_MOVED_M
      ? ''
      : `The spot has moved ${distanceText(movedM)} since: work it out again.`,
    voidShare > 0
      ? `${shareText(voidShare)} of the heights were missing and filled in from their neighbours.`
      : '',
  ].filter((note) => note !== '');
}

const distanceText = (distanceM: number): string =>
  distanceM < 1000 ? `${Math.round(distanceM)} m` : `${(distanceM / 1000).toFixed(1)} km`;

export function obstaclesLine({ drawn, imported, sets }: ObstacleCounts, share: number): string {
  if (drawn + imported === 0) return 'none: draw or import buildings, walls and trees on the map';
  const parts = [
    drawn === 0 ? '' : `${drawn} drawn`,
    sets === 0 ? '' : `${imported} in ${sets === 1 ? 'an import' : `${sets} imports`}`,
  ];
  return `${parts.filter((part) => part !== '').join(', ')}; ${decides(share)}`;
}

export function traceLine(spot: Spot, share: number): string {
  const points = Object.keys(spot.skyline).length;
  if (points === 0)
    return 'none: type points, hold the phone along the skyline, or trace it on a photo';
  const counted = points === 1 ? '1 point' : `${points} points`;
  return `${counted}; ${datedText(spot.skylineOrigin, spot.skylineDated)}; ${decides(share)}`;
}

/** What the skyline is made of, in a few words. */
export function madeOf(spot: Spot, counts: ObstacleCounts): string {
  const points = Object.keys(spot.skyline).length;
  const parts = [
    spot.terrain === null ? '' : 'terrain',
    counts.drawn + counts.imported === 0 ? '' : 'obstacles',
    points === 0 ? '' : `trace of ${points === 1 ? '1 point' : `${points} points`}`,
  ].filter((part) => part !== '');
  return parts.length === 0 ? 'flat' : parts.join(', ');
}

/** Where the skyline comes from, every source that stands in it. */
export function originsOf(spot: Spot, obstacleShare: number): string {
  const trace =
    Object.keys(spot.skyline).length === 0
      ? ''
      : spot.skylineOrigin === ''
        ? 'a trace, origin not noted'
        : spot.skylineOrigin;
  const others = [
    // What was found on the way follows the names.
    spot.terrain === null ? '' : `terrain by ${spot.terrain.origin.split(';')[0]}`,
    obstacleShare > 0 ? 'obstacles on the map' : '',
  ].filter((part) => part !== '');
  if (others.length === 0) return trace;
  return [...others, ...(trace === '' ? [] : [`trace: ${trace}`])].join('; ');
}
