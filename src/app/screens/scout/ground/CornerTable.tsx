import type { ReactNode } from 'react';

import { parseCoordinates } from '../../../../core/place/coordinates-text.ts';
import type { Corner } from '../../../../core/skyline/obstacle.ts';
import { TextField } from '../../../ui/TextField.tsx';
import { coordinatesFault } from '../coordinates-fault.ts';
import { cornerText } from './corner-text.ts';

type CornerTableProps = {
  readonly corners: readonly Corner[];
  readonly closed: boolean;
  readonly onChange: (corners: readonly Corner[]) => void;
};

/** More corners than anyone reads are changed on the map. */
const MOST_ROWS = 40;

/** The corners of an outline as coordinates; a way to change them without a pointer. */
export function CornerTable({ corners, closed, onChange }: CornerTableProps): ReactNode {
  const least = closed ? 3 : 2;
  if (corners.length > MOST_ROWS)
    return <p className="quiet">{corners.length} corners; drag them on the map.</p>;
  return (
    <details>
      <summary data-open="corners">{corners.length} corners</summary>
      <p className="quiet">
        Drag a corner on the map, or the point between two to make a new one; the other button takes
        one away.
      </p>
      <ol className="corners">
        {corners.map((corner, at) => (
          <li key={`${at} ${cornerText(corner)}`} data-corner={at}>
            <TextField
              label={`Corner ${at + 1}`}
              field="corner"
              value={cornerText(corner)}
              faultOf={coordinatesFault}
              onCommit={(text) => {
                const read = parseCoordinates(text);
                if (read.ok)
                  onChange(
                    corners.with(at, [read.value.longitudeDeg, read.value.latitudeDeg] as const),
                  );
              }}
            />
            <button
              type="button"
              aria-label={`Remove corner ${at + 1}`}
              disabled={corners.length <= least}
              onClick={() => onChange(corners.filter((_, index) => index !== at))}
            >
              Remove
            </button>
          </li>
        ))}
      </ol>
      <button
        type="button"
        data-add-corner-after
        onClick={() => onChange([...corners, halfway(corners.at(-1), corners[0])])}
      >
        Add a corner after the last
      </button>
    </details>
  );
}

/** Between the last corner and the first, to be moved from there. */
const halfway = (last: Corner = [0, 0], first: Corner = last): Corner => [
  Number(((last[0] + first[0]) / 2).toFixed(7)),
  Number(((last[1] + first[1]) / 2).toFixed(7)),
];
