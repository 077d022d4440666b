import { columnFigure, columnStep } from '../../../core/plan/column-reading.ts';
import type { SetupColumn } from '../../../core/plan/setup-column.ts';
import { COLUMN_ROLES, VERDICTS } from '../../../core/plan/verdicts.ts';
import type { SetupLight } from '../../../core/plan/setup-light.ts';
import { inHandText } from '../../ui/figure-text.ts';
import { brokenText } from '../../ui/verdict-text.ts';

/** The light at a minute; NaN where the frame shows no sky. EV at ISO 100. */
export type MinuteFigures = {
  readonly sunApparentAltitudeDeg: number;
  readonly sunAzimuthDeg: number;
  readonly sunInFrame: boolean;
  readonly patchEv: number;
  readonly patchSpreadStops: number;
  readonly darkEv: number;
  readonly meanEv: number;
  readonly brightEv: number;
  readonly ambientHiddenEv: number;
  readonly ambientOutEv: number;
  readonly incidentEv: number;
};

export const figuresOfLight = (light: SetupLight): MinuteFigures => ({
  sunApparentAltitudeDeg: light.sun.apparentAltitudeDeg,
  sunAzimuthDeg: light.sun.azimuthDeg,
  sunInFrame: light.skyInFrame?.sunInFrame === true,
  patchEv: light.skyInFrame?.patchEv ?? NaN,
  patchSpreadStops: light.patchSpreadStops,
  darkEv: light.skyInFrame?.darkEv ?? NaN,
  meanEv: light.skyInFrame?.meanEv ?? NaN,
  brightEv: light.skyInFrame?.brightEv ?? NaN,
  ambientHiddenEv: light.ambientHiddenEv,
  ambientOutEv: light.ambientOutEv,
  incidentEv: light.incidentEv,
});

/** The same between two steps of a column. */
export function figuresOfColumn(column: SetupColumn, instantMs: number): MinuteFigures {
  const at = (figures: Float64Array): number => columnFigure(column, figures, instantMs);
  const step = columnStep(column, instantMs);
  return {
    sunApparentAltitudeDeg: at(column.sunApparentAltitudeDeg),
    sunAzimuthDeg: column.sunAzimuthDeg[step] ?? NaN,
    sunInFrame: column.sunInFrame[step] === 1,
    patchEv: at(column.patchEv),
    patchSpreadStops: at(column.patchSpreadStops),
    darkEv: at(column.darkEv),
    meanEv: at(column.meanEv),
    brightEv: at(column.brightEv),
    ambientHiddenEv: at(column.ambientHiddenEv),
    ambientOutEv: at(column.ambientOutEv),
    incidentEv: at(column.incidentEv),
  };
}

/** In hand at a minute, or what breaks, between two steps of a column. */
export function verdictOfColumn(column: SetupColumn, instantMs: number): string {
  const step = columnStep(column, instantMs);
  const verdict = VERDICTS[column.verdict[step] ?? -1] ?? 'not-asked';
  const inHandStops = columnFigure(column, column.inHandStops, instantMs);
  if (verdict === 'works') return Number.isFinite(inHandStops) ? inHandText(inHandStops) : 'works';
  const role = COLUMN_ROLES[column.limitingRole[step] ?? 0] ?? 'none';
  return brokenText({
    verdict,
    shortByStops: shortStops(column, step, instantMs),
    role: role === 'none' ? null : role,
  });
}

/** Between two steps that break the same rule; else that of the nearer. */
function shortStops(column: SetupColumn, step: number, instantMs: number): number {
  const { instantMs: steps, verdict, shortByStops } = column;
  const other = step + ((steps[step] ?? NaN) <= instantMs ? 1 : -1);
  if (verdict[step] !== verdict[other]) return shortByStops[step] ?? NaN;
  return columnFigure(column, shortByStops, instantMs);
}
