import { demoKit } from '../../../src/core/plan/demo-kit.ts';
import { demoShoot } from '../../../src/core/plan/demo-shoot.ts';
import { figuresThere, type Figure } from './figures.ts';
import type { HandCondition } from './daylight.ts';
import { minuteThere, type MinuteThere } from './minute.ts';
import { sunThere } from './sun.ts';

/**
 * A minute of the demo worked out by hand. Figures are exact: whoever reads them off a screen adds
 * half a unit of the last digit shown to the tolerance.
 */
export type ExpectedMinute = {
  readonly setupId: string;
  readonly condition: HandCondition;
  readonly instantMs: number;
  readonly figures: Readonly<Record<string, Figure>>;
  /** For what hangs on the settings: what the lights are asked, their heads, where the patch lies. */
  readonly minute: MinuteThere;
};

/** The demo's date lies in summer time, two hours ahead of UTC. */
const OFFSET = '+02:00';
const MINUTE_MS = 60_000;

/** The quartet under the demo's sky: at its start, sun up, and at the minute nearest to true −3°. */
export function expectedMinutes(): readonly [sunUp: ExpectedMinute, dusk: ExpectedMinute] {
  const { date, setups } = demoShoot();
  const startMs = Date.parse(`${date}T${setups.quartet?.startClock}${OFFSET}`);
  return [
    expectedMinute('quartet', 'broken-cloud', startMs),
    expectedMinute('quartet', 'broken-cloud', nearestMinute(startMs, -3)),
  ];
}

export function expectedMinute(
  setupId: string,
  condition: HandCondition,
  instantMs: number,
): ExpectedMinute {
  const minute = minuteThere({
    shoot: demoShoot(),
    kit: demoKit(),
    setupId,
    condition,
    instantMs,
  });
  return { setupId, condition, instantMs, figures: figuresThere(minute), minute };
}

/** A clock time of the demo's date. */
export const demoInstantMs = (clock: string): number =>
  Date.parse(`${demoShoot().date}T${clock}${OFFSET}`);

function nearestMinute(fromMs: number, trueAltitude: number): number {
  const { latitudeDeg = 0, longitudeDeg = 0, elevationM = 0 } = demoShoot().spots.pier ?? {};
  const away = (atMs: number): number =>
    Math.abs(sunThere(atMs, latitudeDeg, longitudeDeg, elevationM).trueAltitude - trueAltitude);
  let atMs = fromMs;
  while (away(atMs + MINUTE_MS) < away(atMs)) atMs += MINUTE_MS;
  return atMs;
}
