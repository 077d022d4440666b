/** People before the camera, in one row or several. */
export type Row = {
  /** All of them together. */
  readonly people: number;
  /** Between neighbouring faces. */
  readonly spacingM: number;
  readonly faceHeightM: number;
  /** One behind the other, the front one at the camera's distance; absent: one. */
  readonly rows?: number | undefined;
  readonly rowSpacingM?: number | undefined;
};

export type FacePlace = {
  /** Metres from the middle of the front row, to the camera's right. */
  readonly rightM: number;
  /** Metres behind the front row. */
  readonly behindM: number;
  /** 0 is the front row. */
  readonly row: number;
  readonly rows: number;
  /** From the camera's left, 0 the first of its row. */
  readonly inRow: number;
  readonly rowPeople: number;
};

/**
 * Where the faces are, front row first, each from the camera's left. The rows are as even as they
 * can be, the back ones take who is left over; each stands centred, or half a place to the right
 * where it would else stand face behind face. All faces are equally high.
 */
export function facePlaces(row: Row): readonly FacePlace[] {
  const rows = Math.max(1, Math.min(row.rows ?? 1, row.people));
  const places: FacePlace[] = [];
  let phaseBefore = Number.NaN;
  for (let at = 0; at < rows; at += 1) {
    const people = Math.floor((row.people + at) / rows);
    // Where a row's faces stand between whole spacings: 0 or a half.
    const centred = ((people - 1) / 2) % 1;
    const shift = centred === phaseBefore ? 0.5 : 0;
    phaseBefore = (centred + shift) % 1;
    for (let inRow = 0; inRow < people; inRow += 1)
      places.push({
        rightM: (inRow - (people - 1) / 2 + shift) * row.spacingM,
        behindM: at * (row.rowSpacingM ?? 0),
        row: at,
        rows,
        inRow,
        rowPeople: people,
      });
  }
  return places;
}

/** How far the last row stands behind the first. */
export const depthOfGroupM = (row: Row): number => facePlaces(row).at(-1)?.behindM ?? 0;
