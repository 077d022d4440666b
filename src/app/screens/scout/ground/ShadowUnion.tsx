import { useEffect, useState, type ReactNode } from 'react';

import { sunPosition } from '../../../../core/sun-moon/sun-position.ts';
import { clockTime } from '../../../../core/units/civil-time.ts';
import { useServices } from '../../../state/services.ts';
import { saveTextFile } from '../../../ui/save-file.ts';
import { areaText } from './area-text.ts';
import type { SpotShadowProps } from './SpotInShadow.tsx';

type Joined =
  | { readonly kind: 'nothing' }
  | { readonly kind: 'working'; readonly stop: AbortController; readonly share: number }
  | { readonly kind: 'failed'; readonly why: string }
  | {
      readonly kind: 'there';
      readonly of: SpotShadowProps;
      readonly areaM2: number;
      readonly geoJson: string;
      readonly notes: readonly string[];
    };

/** The ground in shadow at the minute as one shape: its area, and a file of it. */
export function ShadowUnion(props: SpotShadowProps): ReactNode {
  const { spot, minuteMs, date, standing } = props;
  const { ground } = useServices();
  const [joined, setJoined] = useState<Joined>({ kind: 'nothing' });
  const stop = joined.kind === 'working' ? joined.stop : null;
  useEffect(
    function stopWhenLeft() {
      return () => stop?.abort();
    },
    [stop],
  );
  const at = clockTime(minuteMs, spot.zone);

  const join = async (): Promise<void> => {
    const working = new AbortController();
    setJoined({ kind: 'working', stop: working, share: 0 });
    const done = await ground.run(
      'shadow-union',
      {
        obstacles: standing.map(({ obstacle }) => obstacle),
        sun: sunPosition(minuteMs, spot),
        date,
        points: [],
      },
      {
        signal: working.signal,
        onProgress: (share) => setJoined({ kind: 'working', stop: working, share }),
      },
    );
    if (working.signal.aborted) return;
    if (!done.ok)
      return setJoined({
        kind: 'failed',
        why: done.problem.kind === 'failed' ? done.problem.message : 'Cancelled.',
      });
    if (!done.value.ok) return setJoined({ kind: 'failed', why: done.value.problem });
    const { areaM2, geoJson, isCutShort, leftOutCount } = done.value.value;
    setJoined({
      kind: 'there',
      of: props,
      areaM2,
      geoJson,
      notes: [
        ...(isCutShort ? ['The sun stands under 1°: shadows were ended at 57 heights.'] : []),
        ...(leftOutCount > 0
          ? [`Left out: ${leftOutCount}, too near a pole or of no extent.`]
          : []),
      ],
    });
  };

  return (
    <section aria-label="Ground in shadow">
      <h3>Ground in shadow</h3>
      {joined.kind === 'working' ? (
        <p className="buttons" role="status">
          Joining the shadows, {Math.round(joined.share * 100)} %
          <button
            type="button"
            data-cancel-union
            onClick={() => {
              joined.stop.abort();
              setJoined({ kind: 'nothing' });
            }}
          >
            Cancel
          </button>
        </p>
      ) : (
        <button type="button" data-join-shadows onClick={() => void join()}>
          Join all shadows at {at}
        </button>
      )}
      {joined.kind === 'failed' ? (
        <p className="fault" role="alert" data-note="union-failed">
          {joined.why}
        </p>
      ) : null}
      {joined.kind === 'there' ? <JoinedShadows {...joined} now={props} /> : null}
    </section>
  );
}

function JoinedShadows(
  props: Extract<Joined, { kind: 'there' }> & { readonly now: SpotShadowProps },
): ReactNode {
  const { of, areaM2, geoJson, notes, now } = props;
  const at = clockTime(of.minuteMs, of.spot.zone);
  const isPast =
    of.minuteMs !== now.minuteMs || of.standing !== now.standing || of.date !== now.date;
  return (
    <>
      <p>
        At {at} on {of.date}: <strong data-figure="shadow-area">{areaText(areaM2)}</strong> of level
        ground in shadow, footprints included{isPast ? '; the map has moved on since' : ''}.
      </p>
      {notes.map((note) => (
        <p key={note} className="quiet">
          {note}
        </p>
      ))}
      <button
        type="button"
        data-save-shadows
        onClick={() =>
          saveTextFile(
            `shadows ${of.date} ${at.replace(':', '')}.geojson`,
            geoJson,
            'application/geo+json',
          )
        }
      >
        Save it as GeoJSON
      </button>
    </>
  );
}
