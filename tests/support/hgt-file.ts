/** A tile as the format has it: signed 16-bit, high byte first, row by row from the north. */
export function hgtBytes(
  side: number,
  heightM: (row: number, column: number) => number,
): Uint8Array<ArrayBuffer> {
  const bytes = new Uint8Array(side * side * 2);
  const view = new DataView(bytes.buffer);
  for (let row = 0; row < side; row += 1)
    for (let column = 0; column < side; column += 1)
      view.setInt16((row * side + column) * 2, heightM(row, column), false);
  return bytes;
}
