import type { Spot } from '../../../../core/plan/shoot.ts';
import { groundVector } from '../../../../core/place/geodesy.ts';
import { formatDate } from '../../../../core/units/civil-time.ts';
import type { ObstacleCounts } from './skyline-sources.ts';

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

/** How far the spot stands from where its terrain was worked out; null without terrain. */
export const movedSinceM = (spot: Spot): number | null =>
  spot.terrain === null ? null : groundVector(spot.terrain, spot).distanceM;

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
