import { formatAperture, formatMeterAperture } from '../exposure/aperture-scale.ts';
import type { DialStep } from '../exposure/dial-scale.ts';
import { formatIso } from '../exposure/iso-scale.ts';
import { formatNd } from '../exposure/lens-filter.ts';
import { formatShutter } from '../exposure/shutter-scale.ts';
import { formatPower, type PowerScale } from '../strobe/power-scale.ts';
import { clockTime } from '../units/civil-time.ts';
import type { LadderDial } from './stop-ladder.ts';
import type { DialChange, HeadChange, StopLimit } from './stop-line.ts';
import type { StopLine } from './stop-times.ts';

/** How a setup's lights are called and how their heads count power, by place in `lights`. */
export type StopNames = {
  readonly zone: string;
  readonly dialStep: DialStep;
  readonly lights: readonly { readonly name: string; readonly scale: PowerScale }[];
};

/** ‘20:31, 2 stops darker: f/4; key 1/8 (3.0 below full); meter f/4.’ */
export function stopLineText(line: StopLine, names: StopNames): string {
  const { setting, stops, atMs } = line;
  const when = `${clockTime(atMs, names.zone)}, ${stopsApart(stops)}`;
  if (!setting.ok) {
    const { limits, problem } = setting.problem;
    const short =
      problem.shortByStops > 0.05 ? `, short by ${problem.shortByStops.toFixed(1)}` : '';
    return [
      `${when}: nothing more to change${short}.`,
      ...limits.map((one) => limitText(one, names)),
    ].join(' ');
  }
  const { dials, heads, recipe, limits } = setting.value;
  const parts = [
    ...dials.map((change) => dialText(change, names)),
    ...(heads.length === 0 ? ['heads stay'] : heads.map((change) => headText(change, names))),
    `meter ${formatMeterAperture(recipe.meterFNumber)} at ${formatIso(recipe.iso)}, ${formatShutter(recipe.shutterS, names.dialStep)}`,
  ];
  return [`${when}: ${parts.join('; ')}.`, ...limits.map((one) => limitText(one, names))].join(' ');
}

function stopsApart(stops: number): string {
  if (stops === 0) return 'as it began';
  const size = Math.abs(stops);
  return `${size} ${size === 1 ? 'stop' : 'stops'} ${stops < 0 ? 'darker' : 'brighter'}`;
}

function dialText({ dial, from, to }: DialChange, { dialStep }: StopNames): string {
  switch (dial) {
    case 'nd':
      return to < from && to < 0.05 ? `${formatNd(from)} off` : `ND to ${formatNd(to).slice(3)}`;
    case 'aperture':
      return formatAperture(to, dialStep);
    case 'shutter':
      return formatShutter(to, dialStep);
    case 'iso':
      return formatIso(to);
  }
}

function headText({ light, toPowerStops }: HeadChange, { lights }: StopNames): string {
  const named = lights[light];
  if (named === undefined) return '';
  const { dial, below } = formatPower(toPowerStops, named.scale);
  return `${named.name} ${dial} (${below})`;
}

const LAST = {
  nd: 'No more ND to change',
  aperture: 'The aperture is at its end',
  shutter: 'The shutter is at the end of what is allowed',
  iso: 'ISO is at its end',
} as const satisfies Record<LadderDial, string>;

const PINNED = {
  nd: 'The filters are pinned',
  aperture: 'The aperture is pinned',
  shutter: 'The shutter is pinned',
  iso: 'ISO is pinned',
} as const satisfies Record<LadderDial, string>;

export function limitText(limit: StopLimit, { lights }: StopNames): string {
  switch (limit.kind) {
    case 'dial-at-end':
      return `${LAST[limit.dial]}.`;
    case 'dial-pinned':
      return `${PINNED[limit.dial]}.`;
    case 'head-at-lowest':
      return `${namesOf(limit.lights, lights)} cannot go lower.`;
    case 'head-at-full':
      return `${namesOf(limit.lights, lights)} cannot go higher.`;
  }
}

function namesOf(places: readonly number[], lights: StopNames['lights']): string {
  const names = places.flatMap((place) => lights[place]?.name ?? []);
  const text = names.length === 0 ? 'the heads' : names.join(' and ');
  return text.charAt(0).toUpperCase() + text.slice(1);
}
