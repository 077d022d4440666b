import { strongestStops } from '../../../core/colour/filter-stack.ts';
import { formatAperture } from '../../../core/exposure/aperture-scale.ts';
import { formatNd } from '../../../core/exposure/lens-filter.ts';
import { formatShutter } from '../../../core/exposure/shutter-scale.ts';
import type { Kit, KitShelf } from '../../../core/plan/kit.ts';
import { kilograms, metres, signedTenths, tenths } from '../../ui/figure-text.ts';

/** What matters of an item in one line, for the folded shelf. */
export function itemLine(kit: Kit, shelf: KitShelf, id: string): string {
  switch (shelf) {
    case 'cameras': {
      const camera = kit.cameras[id];
      return camera === undefined
        ? ''
        : `${camera.sensorWidthMm} × ${camera.sensorHeightMm} mm, sync ${formatShutter(camera.syncShutterS)}, ISO ${camera.baseIso} to ${camera.maxIso}${weight(camera)}`;
    }
    case 'lenses': {
      const lens = kit.lenses[id];
      if (lens === undefined) return '';
      const leaf = lens.leafShutterS === null ? '' : `, leaf ${formatShutter(lens.leafShutterS)}`;
      return `${formatAperture(lens.minFNumber)} to ${formatAperture(lens.maxFNumber)}${leaf}${weight(lens)}`;
    }
    case 'heads': {
      const head = kit.heads[id];
      if (head === undefined) return '';
      const readings = Object.keys(head.readings).length;
      const known =
        readings > 0
          ? `${readings} metered ${readings === 1 ? 'shot' : 'shots'}`
          : head.guideNumberM === null
            ? 'watt-seconds only, a guess'
            : `rated guide number ${metres(head.guideNumberM)}`;
      return `${head.owned} owned, ${known}${weight(head)}`;
    }
    case 'modifiers': {
      const modifier = kit.modifiers[id];
      return modifier === undefined
        ? ''
        : `${signedTenths(-modifier.lossStops)} stops, ${metres(modifier.widthM)} × ${metres(modifier.heightM)}${weight(modifier)}`;
    }
    case 'filters': {
      const filter = kit.filters[id];
      if (filter === undefined) return '';
      if (filter.kind === 'variable-nd')
        return `${formatNd(filter.stops)} to ${formatNd(strongestStops(filter))}`;
      return filter.kind === 'nd' || filter.kind === 'graduated-nd'
        ? formatNd(filter.stops)
        : `${tenths(filter.stops)} stops`;
    }
    case 'gels': {
      const gel = kit.gels[id];
      return gel === undefined
        ? ''
        : `${signedTenths(gel.miredShift).replace('.0', '')} mired, ${tenths(gel.stops)} stops`;
    }
    case 'stands': {
      const stand = kit.stands[id];
      return stand === undefined
        ? ''
        : `${stand.owned} owned, up to ${metres(stand.maxHeightM)}, your limit ${stand.maxGustMS} m/s${weight(stand)}`;
    }
    case 'batteries': {
      const battery = kit.batteries[id];
      return battery === undefined
        ? ''
        : `${battery.owned} owned, ${battery.wattHours} Wh each${weight(battery)}`;
    }
  }
}

/** Nothing where it is not stated. */
const weight = ({ massKg }: { readonly massKg: number }): string =>
  massKg > 0 ? `, ${kilograms(massKg)}` : '';
