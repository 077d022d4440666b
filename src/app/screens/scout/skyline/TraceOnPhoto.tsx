import { useMemo, useState, type ReactNode } from 'react';

import type { Spot } from '../../../../core/plan/shoot.ts';
import { photoRun } from '../../../../core/skyline/photo-run.ts';
import type { PixelPoint } from '../../../../core/skyline/photo-sight.ts';
import type { Skyline } from '../../../../core/skyline/skyline.ts';
import { SelectField } from '../../../ui/SelectField.tsx';
import { KeepTrace, RUN_REST, type KeepAnswer } from './KeepTrace.tsx';
import { KnownPointFields, type KnownDirection } from './KnownPointFields.tsx';
import { PHOTO_KINDS, sightOfPhoto, type PhotoKind } from './photo-kinds.ts';
import { PhotoStage, type StageTool } from './PhotoStage.tsx';
import { TracePreview } from './TracePreview.tsx';
import { photoProblemText, sightDoubts, sightText, stretchText } from './trace-words.ts';
import type { OpenPhoto } from './use-trace-photo.ts';

type TraceOnPhotoProps = {
  readonly photo: OpenPhoto;
  readonly spot: Spot;
  readonly onKeep: (keep: KeepAnswer, runs: readonly Skyline[]) => void;
};

const UNKNOWN: KnownDirection = { azimuthDeg: null, altitudeDeg: null };
const ZOOMS = [1, 2, 4] as const;
const TOOLS = ['first', 'second'] as const;

/** Two known points, then the line along the skyline, then the trace. */
export function TraceOnPhoto({ photo, spot, onKeep }: TraceOnPhotoProps): ReactNode {
  const [kind, setKind] = useState<PhotoKind>('rectilinear');
  const [tool, setTool] = useState<StageTool>('first');
  const [zoom, setZoom] = useState<(typeof ZOOMS)[number]>(1);
  const [marks, setMarks] = useState<readonly (PixelPoint | null)[]>([null, null]);
  const [known, setKnown] = useState<readonly KnownDirection[]>([UNKNOWN, UNKNOWN]);
  const [line, setLine] = useState<readonly PixelPoint[]>([]);
  const sight = useMemo(
    () => sightOfPhoto({ kind, photo, marks, known }),
    [kind, photo, marks, known],
  );
  const run = useMemo(() => (sight?.ok === true ? photoRun(sight.value, line) : []), [sight, line]);

  const put = (pixel: PixelPoint): void => {
    if (tool === 'line') return setLine([...line, pixel]);
    setMarks(marks.map((mark, index) => (TOOLS[index] === tool ? pixel : mark)));
  };
  const takeBack = (): void => {
    if (tool === 'line') setLine(line.slice(0, -1));
    else setMarks(marks.map((mark, index) => (TOOLS[index] === tool ? null : mark)));
  };
  return (
    <div className="trace-on-photo">
      <SelectField
        label="The photo is"
        field="photo-kind"
        value={kind}
        options={PHOTO_KINDS}
        onChoose={setKind}
      />
      {TOOLS.map((each, index) => (
        <KnownPointFields
          key={each}
          number={index === 0 ? 1 : 2}
          isMarked={marks[index] !== null}
          isMarking={tool === each}
          known={known[index] ?? UNKNOWN}
          onMark={() => setTool(each)}
          onKnown={(direction) =>
            setKnown(known.map((one, at) => (at === index ? direction : one)))
          }
        />
      ))}
      <p className="choices">
        <button
          type="button"
          aria-pressed={tool === 'line'}
          data-draw-line
          onClick={() => setTool('line')}
        >
          Draw along the skyline
        </button>
        <button
          type="button"
          disabled={line.length === 0}
          data-clear-line
          onClick={() => setLine([])}
        >
          Clear the line
        </button>
        {ZOOMS.map((each) => (
          <button
            key={each}
            type="button"
            aria-pressed={zoom === each}
            data-zoom={each}
            onClick={() => setZoom(each)}
          >
            {each}×
          </button>
        ))}
      </p>
      <PhotoStage
        photo={photo}
        tool={tool}
        marks={marks}
        line={line}
        zoom={zoom}
        onPut={put}
        onTakeBack={takeBack}
      />
      {sight === null ? (
        <p className="quiet" data-figure="photo-sight">
          Mark both points and give their bearings and altitudes.
        </p>
      ) : sight.ok ? (
        <>
          <p data-figure="photo-sight">
            {sightText(sight.value)}. {stretchText(sight.value)}
          </p>
          {sightDoubts(sight.value, photo.fieldDeg).map((doubt) => (
            <p key={doubt} role="alert">
              {doubt}
            </p>
          ))}
        </>
      ) : (
        <p className="fault" role="alert" data-figure="photo-sight">
          {photoProblemText(sight.problem)}
        </p>
      )}
      {run.length === 0 ? null : (
        <>
          <TracePreview spot={spot} runs={[run]} />
          <KeepTrace
            runs={[run]}
            origin={`photo ${photo.name}`}
            restWords={RUN_REST}
            onKeep={(keep) => onKeep(keep, [run])}
            onDrop={() => setLine([])}
          />
        </>
      )}
    </div>
  );
}
