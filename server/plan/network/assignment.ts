/**
 * The best way to give each row a column of its own kind, every column up to its count.
 *
 * `worth[row]` lists the worth of each column, -Infinity where impossible. Gives the total with the
 * dual prices: total = sum(rowPrice) + sum(count x columnPrice), every columnPrice >= 0 and
 * rowPrice[r] + columnPrice[c] >= worth[r][c]; null when the rows cannot all be served.
 *
 * Method: shortest augmenting paths (Kuhn 1955; Jonker and Volgenant 1987) on columns repeated by
 * their counts.
 */
export interface Assignment {
  readonly total: number;
  /** The column that each row is given. */
  readonly column: Int32Array;
  readonly rowPrice: Float64Array;
  readonly columnPrice: Float64Array;
}

export function assign(
  worth: readonly Float64Array[],
  counts: ArrayLike<number>,
): Assignment | null {
  const rows = worth.length;
  const kinds = counts.length;
  const columns: number[] = [];
  for (let kind = 0; kind < kinds; kind++) {
    if (worth.every((row) => row[kind] === -Infinity)) continue;
    for (let copy = 0; copy < Math.min(counts[kind]!, rows); copy++) columns.push(kind);
  }
  const width = columns.length;
  const u = new Float64Array(rows + 1);
  const v = new Float64Array(width + 1);
  const owner = new Int32Array(width + 1);
  const way = new Int32Array(width + 1);
  const least = new Float64Array(width + 1);
  const seen = new Uint8Array(width + 1);
  for (let row = 1; row <= rows; row++) {
    owner[0] = row;
    least.fill(Infinity);
    seen.fill(0);
    let at = 0;
    do {
      seen[at] = 1;
      const from = owner[at]!;
      const costs = worth[from - 1]!;
      let delta = Infinity;
      let next = -1;
      for (let column = 1; column <= width; column++) {
        if (seen[column] === 1) continue;
        const reduced = -costs[columns[column - 1]!]! - u[from]! - v[column]!;
        if (reduced < least[column]!) {
          least[column] = reduced;
          way[column] = at;
        }
        if (least[column]! < delta) {
          delta = least[column]!;
          next = column;
        }
      }
      if (next < 0) return null;
      for (let column = 0; column <= width; column++) {
        if (seen[column] === 1) {
          u[owner[column]!]! += delta;
          v[column]! -= delta;
        } else least[column]! -= delta;
      }
      at = next;
    } while (owner[at] !== 0);
    while (at !== 0) {
      const before = way[at]!;
      owner[at] = owner[before]!;
      at = before;
    }
  }
  return { ...prices(u, v, columns, counts, rows), column: given(owner, columns, rows) };
}

function given(owner: Int32Array, columns: readonly number[], rows: number): Int32Array {
  const column = new Int32Array(rows);
  for (let at = 1; at < owner.length; at++)
    if (owner[at]! > 0) column[owner[at]! - 1] = columns[at - 1]!;
  return column;
}

/** Copies of one kind share the lowest of their prices, which keeps every promise and the total. */
function prices(
  u: Float64Array,
  v: Float64Array,
  columns: readonly number[],
  counts: ArrayLike<number>,
  rows: number,
): Omit<Assignment, 'column'> {
  const rowPrice = new Float64Array(rows);
  const columnPrice = new Float64Array(counts.length);
  let total = 0;
  for (let row = 0; row < rows; row++) {
    rowPrice[row] = -u[row + 1]!;
    total += rowPrice[row]!;
  }
  const seen = new Uint8Array(counts.length);
  columns.forEach((kind, at) => {
    const price = -v[at + 1]!;
    total += price;
    if (seen[kind] === 0 || price < columnPrice[kind]!) columnPrice[kind] = price;
    seen[kind] = 1;
  });
  return { total, rowPrice, columnPrice };
}
