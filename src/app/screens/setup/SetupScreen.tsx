import './setup.css';
import { useDeferredValue, useMemo, type ReactNode } from 'react';

import { inOrder } from '../../../core/plan/order-key.ts';
import { setupView } from '../../../core/plan/setup-view.ts';
import type { Setup } from '../../../core/plan/setup-schema.ts';
import type { Spot } from '../../../core/plan/shoot.ts';
import { sunEvents } from '../../../core/sun-moon/sun-events.ts';
import { dayBoundsMs } from '../../../core/units/civil-time.ts';
import { useKit, useShoot } from '../../state/documents.tsx';
import { useView } from '../../state/view.ts';
import { Asked } from './Asked.tsx';
import { Heading } from './Heading.tsx';
import { LightFigures } from './LightFigures.tsx';
import { MinuteStrip } from './MinuteStrip.tsx';
import { KnowHere, TakeCare } from './Notes.tsx';
import { OrInstead } from './OrInstead.tsx';
import { PredictedFrame } from './frame/PredictedFrame.tsx';
import { gapText } from './problem-text.ts';
import { PlanSketch } from './plan/PlanSketch.tsx';
import { SetThis } from './SetThis.tsx';
import { SunLine } from './SunLine.tsx';
import { SetupChooser } from './SetupChooser.tsx';
import { minuteOf, setupBlock, stripRange } from './setup-minute.ts';
import { Tones } from './Tones.tsx';
import { usePresent } from './use-present.ts';

/** One setup at one minute: what to set, in which order, and what it makes of the picture. */
export function SetupScreen(): ReactNode {
  const shoot = useShoot();
  const chosenId = useView((view) => view.setupId);
  const spotId = useView((view) => view.spotId);
  const setups = inOrder(shoot.setups);
  const [setupId, setup] =
    setups.find(([id]) => id === chosenId) ??
    setups.find(([, each]) => each.spotId === spotId) ??
    setups[0] ??
    [];
  if (setupId === undefined || setup === undefined)
    return (
      <div className="setup-screen">
        <p className="gap">This shoot has no setup yet. Choose a spot and add one.</p>
        <SetupChooser setupId={null} />
      </div>
    );
  const spot = shoot.spots[setup.spotId];
  if (spot === undefined)
    return (
      <div className="setup-screen">
        <SetupChooser setupId={setupId} />
        <p className="gap" role="alert">
          {gapText({ kind: 'gone' })}
        </p>
      </div>
    );
  return (
    <div className="setup-screen">
      <SetupChooser setupId={setupId} />
      <SetupAtMinute key={setupId} setupId={setupId} setup={setup} spot={spot} />
    </div>
  );
}

type SetupAtMinuteProps = {
  readonly setupId: string;
  readonly setup: Setup;
  readonly spot: Spot;
};

function SetupAtMinute({ setupId, setup, spot }: SetupAtMinuteProps): ReactNode {
  const shoot = useShoot();
  const kit = useKit();
  const chosenMs = useView((view) => view.minuteMs);
  const presentMs = usePresent();
  const day = useDay(shoot.date, spot, setup);
  const { minuteMs, isPresent } = minuteOf({ ...day, chosenMs, presentMs });
  const asked = useMemo(
    () => ({ shoot, kit, setupId, instantMs: minuteMs }),
    [shoot, kit, setupId, minuteMs],
  );
  const seen = useMemo(() => setupView(asked), [asked]);
  const view = seen.ok ? seen.value : null;
  // The fields follow the minute when there is time: they show little of it.
  const calmView = useDeferredValue(view);
  return (
    <>
      <Heading setup={setup} spot={spot} view={view} />
      <section className="set-this" aria-label="Set this" data-first-figures="drawn">
        {seen.ok ? (
          <SetThis asked={asked} view={seen.value} presentMs={isPresent ? presentMs : null} />
        ) : (
          <p className="gap" role="alert">
            {gapText(seen.problem)}
          </p>
        )}
      </section>
      {view === null ? null : <Tones view={view} />}
      <MinuteStrip
        setupId={setupId}
        spot={spot}
        minuteMs={minuteMs}
        presentMs={presentMs}
        isPresent={isPresent}
        {...day}
      />
      <section className="setup-light">
        {view === null ? null : (
          <>
            <PredictedFrame view={view} kit={kit} minuteMs={minuteMs} />
            <PlanSketch setupId={setupId} view={view} />
            <LightFigures view={view} />
            <SunLine view={view} />
          </>
        )}
      </section>
      {view === null ? null : <KnowHere asked={asked} view={view} />}
      <Asked setupId={setupId} setup={setup} spot={spot} view={calmView} />
      {view === null ? null : <OrInstead asked={asked} />}
      <TakeCare />
    </>
  );
}

function useDay(date: string, spot: Spot, setup: Setup) {
  const { zone, latitudeDeg, longitudeDeg } = spot;
  const events = useMemo(
    () => sunEvents({ date, zone, place: { latitudeDeg, longitudeDeg } }),
    [date, zone, latitudeDeg, longitudeDeg],
  );
  const { startClock, durationMin } = setup;
  return useMemo(() => {
    const block = setupBlock(date, { zone }, { startClock, durationMin });
    return { events, block, range: stripRange(events, dayBoundsMs(date, zone), block) };
  }, [date, zone, startClock, durationMin, events]);
}
