/**
 * Walks through the table of a card row by row: a row is one choice of designs for all papers but the last, which runs
 * through the row. Most rows hold nothing that is wanted, and the most that a row holds tells so without reading it.
 */

/** The most that each row of a table holds, in order. */
export function topsOf(table: Float64Array, designs: number): Float64Array {
  const tops = new Float64Array(Math.ceil(table.length / designs)).fill(-Infinity);
  for (let cell = 0; cell < table.length; cell++) {
    const row = Math.floor(cell / designs);
    if (table[cell]! > tops[row]!) tops[row] = table[cell]!;
  }
  return tops;
}

/**
 * Visits the rows of a table in order, with what the papers of each cost but for the last one.
 *
 * Takes       the part of a sheet that each paper fills, in the order of the table, and the price of a sheet of each
 *             design.
 */
export function walkRows(
  area: readonly number[],
  price: Float64Array,
  visit: (row: number, paid: number) => void,
): void {
  const [heads, designs] = [area.length - 1, price.length];
  const choice = new Int32Array(Math.max(0, heads));
  /** What the first papers cost: none of them, one, two and so on. */
  const paid = new Float64Array(heads + 1);
  const pay = (from: number): void => {
    for (let at = from; at < heads; at++)
      paid[at + 1] = paid[at]! + area[at]! * price[choice[at]!]!;
  };
  pay(0);
  const rows = designs ** heads;
  for (let row = 0; row < rows; row++) {
    visit(row, paid[heads]!);
    let at = heads - 1;
    for (; at >= 0 && choice[at]! + 1 === designs; at--) choice[at] = 0;
    if (at >= 0) choice[at]! += 1;
    if (at >= 0) pay(at);
  }
}
