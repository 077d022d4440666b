import { useId, useState, type ReactNode } from 'react';

import { parseCoordinates } from '../../../../core/place/coordinates-text.ts';
import { DRAWN_CLASSES, type DrawnClassName } from '../../../../core/plan/new-obstacle.ts';
import type { Corner } from '../../../../core/skyline/obstacle.ts';
import { endTool, lookAtGround, useGroundView } from '../../../state/ground-view.ts';
import { coordinatesFault } from '../coordinates-fault.ts';
import { cornerText } from './corner-text.ts';
import { DRAW_WORDS } from './obstacle-words.ts';

type DrawToolsProps = {
  readonly onFinish: (tool: DrawnClassName, corners: readonly Corner[]) => void;
};

const CLASSES = Object.keys(DRAWN_CLASSES) as readonly DrawnClassName[];

/** What can be drawn on the map, by pointer, at its cross or by typed coordinates. */
export function DrawTools({ onFinish }: DrawToolsProps): ReactNode {
  const { tool, corners } = useGroundView();
  const drawing = tool === null || tool === 'take-over' ? null : tool;
  return (
    <>
      <div className="draw-tools">
        {CLASSES.map((one) => (
          <button
            key={one}
            type="button"
            data-draw={one}
            aria-pressed={tool === one}
            onClick={() =>
              tool === one ? endTool() : lookAtGround({ tool: one, corners: [], obstacleId: null })
            }
          >
            {DRAW_WORDS[one]}
          </button>
        ))}
      </div>
      {drawing === null ? null : (
        <Sketch tool={drawing} corners={corners} onFinish={() => onFinish(drawing, corners)} />
      )}
    </>
  );
}

function Sketch(props: {
  readonly tool: DrawnClassName;
  readonly corners: readonly Corner[];
  readonly onFinish: () => void;
}): ReactNode {
  const { tool, corners, onFinish } = props;
  const { closed } = DRAWN_CLASSES[tool];
  const needed = closed ? 3 : 2;
  return (
    <div className="sketch">
      <p>
        Click each corner on the map and {closed ? 'the first again' : 'the last once more'} to
        finish, or press Enter. With the map in focus and nothing begun by pointer, Enter sets a
        corner at the cross.
      </p>
      {corners.length === 0 ? null : (
        <ol className="corners" data-figure="sketch-corners">
          {corners.map((corner, at) => (
            <li key={`${at} ${cornerText(corner)}`}>
              <span>{cornerText(corner)}</span>
              <button
                type="button"
                aria-label={`Remove corner ${at + 1}`}
                onClick={() =>
                  lookAtGround({ corners: corners.filter((_, index) => index !== at) })
                }
              >
                Remove
              </button>
            </li>
          ))}
        </ol>
      )}
      <NewCorner onCorner={(corner) => lookAtGround({ corners: [...corners, corner] })} />
      <p className="buttons">
        <button
          type="button"
          className="first"
          data-finish-drawing
          disabled={corners.length < needed}
          onClick={onFinish}
        >
          Finish with {corners.length} {corners.length === 1 ? 'corner' : 'corners'}
        </button>
        <button type="button" data-cancel-drawing onClick={endTool}>
          Do not draw
        </button>
      </p>
    </div>
  );
}

function NewCorner({ onCorner }: { readonly onCorner: (corner: Corner) => void }): ReactNode {
  const id = useId();
  const [text, setText] = useState('');
  const [asked, setAsked] = useState(false);
  const fault = asked ? coordinatesFault(text) : null;
  return (
    <form
      className="field"
      onSubmit={(event) => {
        event.preventDefault();
        const read = parseCoordinates(text);
        setAsked(!read.ok);
        if (!read.ok) return;
        setText('');
        onCorner([read.value.longitudeDeg, read.value.latitudeDeg]);
      }}
    >
      <label htmlFor={id}>A corner by its coordinates</label>
      <span className="entry">
        <input
          id={id}
          autoComplete="off"
          data-field="new-corner"
          value={text}
          aria-invalid={fault !== null}
          aria-describedby={fault === null ? undefined : `${id}-fault`}
          onChange={(event) => setText(event.currentTarget.value)}
        />
        <button data-add-corner>Add the corner</button>
      </span>
      {fault === null ? null : (
        <span className="fault" id={`${id}-fault`} role="alert">
          {fault}
        </span>
      )}
    </form>
  );
}
