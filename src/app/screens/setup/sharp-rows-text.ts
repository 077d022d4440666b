import type { SetupCaseInput } from '../../../core/plan/setup-case.ts';
import type { SetupView, WorkingSetup } from '../../../core/plan/setup-view.ts';
import { sharpRows } from '../../../core/plan/sharp-rows.ts';
import { metres } from '../../ui/figure-text.ts';
import { apertureText } from '../../ui/recipe-text.ts';

/** 'focused on the front row 3.4 to 4.9 m, all rows in it', or by how much the last is outside and what would cover it. */
export function sharpRowsText(
  asked: SetupCaseInput,
  view: SetupView,
  { recipe }: WorkingSetup,
): string {
  const { setup, framing, input } = view;
  const camera = asked.kit.cameras[setup.cameraId];
  const { sharp, lastRowM, outsideM, coveredFromFNumber, between } = sharpRows(framing, setup, {
    fNumber: recipe.fNumber,
    maxFNumber: input.lens.maxFNumber,
  });
  const zone = `focused on the front row sharp from ${metres(sharp.nearM)} to ${Number.isFinite(sharp.farM) ? metres(sharp.farM) : 'infinity'}`;
  if (outsideM === 0) return `${zone}, the last row at ${metres(lastRowM)} is in it`;
  const covered =
    coveredFromFNumber === null
      ? 'no aperture of this lens covers it from there'
      : `${apertureText(coveredFromFNumber, camera)} would cover it`;
  const split =
    between === null
      ? ''
      : `; focused at ${metres(between.focusM)} ${apertureText(between.fNumber, camera)} covers both`;
  return `${zone}, the last row at ${metres(lastRowM)} is ${metres(outsideM)} behind it: ${covered}${split}`;
}
