import './column-plot.css';
import { memo, useMemo, type ReactNode } from 'react';

import type { SetupColumn } from '../../core/plan/setup-column.ts';
import { bandPath, linePath, PATH_SIDE, type Curve } from './plot-paths.ts';
import { evTicks, shareOfEv, type PlotFrame } from './plot-frame.ts';
import { shareOf } from './strip-time.ts';
import { verdictSpans } from './verdict-spans.ts';

type ColumnPlotProps = {
  readonly column: SetupColumn;
  readonly frame: PlotFrame;
  /** A panel keeps the beam off the subject. */
  readonly shaded: boolean;
  /** The hold is counted from something else than the patch; that is drawn too. */
  readonly otherReference: boolean;
  readonly hours: readonly { readonly ms: number }[];
};

/** A day of brightness, time running down: drawn once for a column, whatever the cursor does. */
export const ColumnPlot = memo(function ColumnPlot(props: ColumnPlotProps): ReactNode {
  const { column, frame, shaded, otherReference, hours } = props;
  const paths = useMemo(() => plotPaths(column, frame, shaded), [column, frame, shaded]);
  const spans = useMemo(
    () =>
      verdictSpans({
        column,
        faceAmbientEv: shaded ? column.ambientShadedEv : column.ambientOutEv,
      }),
    [column, shaded],
  );
  return (
    <svg className="column-plot" aria-hidden="true" focusable="false">
      {spans
        .filter(
          ({ kind, fromMs, toMs }) =>
            kind !== 'no-sky' && toMs > frame.startMs && fromMs < frame.endMs,
        )
        .map(({ kind, fromMs, toMs }) => (
          <rect
            key={fromMs}
            data-span={kind}
            width="100%"
            y={percent(shareOf(fromMs, frame))}
            height={percent(shareOf(toMs, frame) - shareOf(fromMs, frame))}
            fill={`url(#plot-${kind})`}
          />
        ))}
      {evTicks(frame).map((ev) => (
        <line
          key={ev}
          className="tick"
          x1={percent(shareOfEv(ev, frame))}
          x2={percent(shareOfEv(ev, frame))}
          y2="100%"
        />
      ))}
      {hours.map(({ ms }) => (
        <line
          key={ms}
          className="tick"
          x2="100%"
          y1={percent(shareOf(ms, frame))}
          y2={percent(shareOf(ms, frame))}
        />
      ))}
      <svg
        viewBox={`0 0 ${PATH_SIDE} ${PATH_SIDE}`}
        preserveAspectRatio="none"
        width="100%"
        height="100%"
      >
        <path className="margin" d={paths.margin} />
        <path className="band" d={paths.band} />
        <path className="ambient-between" d={paths.ambientBetween} />
        <path className="patch" d={paths.patch} />
        {otherReference ? <path className="reference" d={paths.reference} /> : null}
        <path className="ambient" d={paths.ambient} />
        <path className="ambient out" d={paths.ambientOut} />
        <path className="reach" d={paths.reach} />
      </svg>
    </svg>
  );
});

const percent = (share: number): string => `${(100 * share).toFixed(2)}%`;

const of =
  (figures: Float64Array): Curve['ev'] =>
  (step) =>
    figures[step] ?? NaN;

const SAME_EV = 0.05;

function plotPaths(column: SetupColumn, frame: PlotFrame, shaded: boolean): Record<string, string> {
  const { instantMs, darkEv, brightEv, frameSpreadStops, ambientHiddenEv } = column;
  const line = (ev: Curve['ev']): string => linePath({ instantMs, ev }, frame);
  const band = (lowEv: Curve['ev'], highEv: Curve['ev']): string =>
    bandPath({ instantMs, lowEv, highEv }, frame);
  const spread = of(frameSpreadStops);
  const out = of(shaded ? column.ambientShadedEv : column.ambientOutEv);
  const hidden = (step: number): number => Math.min(of(ambientHiddenEv)(step), out(step));
  /** Where it is another line than that of the hidden sun. */
  const outApart = (step: number): number => (out(step) - hidden(step) > SAME_EV ? out(step) : NaN);
  return {
    margin: band(
      (step) => of(darkEv)(step) - spread(step),
      (step) => of(brightEv)(step) + spread(step),
    ),
    band: band(of(darkEv), of(brightEv)),
    patch: line(of(column.patchEv)),
    reference: line(of(column.referenceEv)),
    ambient: line(hidden),
    ambientOut: line(outApart),
    ambientBetween: band(hidden, outApart),
    reach: line(of(column.reachEv)),
  };
}
