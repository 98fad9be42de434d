/**
 * The discrete Fourier transform of a square picture, in place.
 *
 * Takes       real and imaginary parts, row by row, side a power of two; `inverse` also divides by the
 *             number of values, so that there and back gives the input.
 * Source      J. W. Cooley, J. W. Tukey (1965), Math. Comp. 19, 297-301, doi:10.1090/S0025-5718-1965-0178586-1.
 */
export function transform(re: Float64Array, im: Float64Array, side: number, inverse = false): void {
  const plan = planOf(side);
  const rowRe = new Float64Array(side);
  const rowIm = new Float64Array(side);
  for (const along of [1, side]) {
    const across = along === 1 ? side : 1;
    for (let line = 0; line < side; line++) {
      for (let i = 0, at = line * across; i < side; i++, at += along) {
        const to = plan.order[i]!;
        rowRe[to] = re[at]!;
        rowIm[to] = inverse ? -im[at]! : im[at]!;
      }
      butterflies(rowRe, rowIm, plan);
      for (let i = 0, at = line * across; i < side; i++, at += along) {
        re[at] = rowRe[i]!;
        im[at] = inverse ? -rowIm[i]! : rowIm[i]!;
      }
    }
  }
  if (!inverse) return;
  const part = 1 / (side * side);
  for (let i = 0; i < re.length; i++) {
    re[i]! *= part;
    im[i]! *= part;
  }
}

interface Plan {
  readonly order: Int32Array;
  readonly cos: Float64Array;
  readonly sin: Float64Array;
}

const plans = new Map<number, Plan>();

function planOf(side: number): Plan {
  const known = plans.get(side);
  if (known !== undefined) return known;
  const bits = Math.log2(side);
  if (!Number.isInteger(bits)) throw new RangeError(`Expected a power of two but received ${side}`);
  const order = Int32Array.from({ length: side }, (_, i) => {
    let turned = 0;
    for (let bit = 0; bit < bits; bit++) if (i & (1 << bit)) turned |= 1 << (bits - 1 - bit);
    return turned;
  });
  const angle = (i: number): number => (-2 * Math.PI * i) / side;
  const plan = {
    order,
    cos: Float64Array.from({ length: side / 2 }, (_, i) => Math.cos(angle(i))),
    sin: Float64Array.from({ length: side / 2 }, (_, i) => Math.sin(angle(i))),
  };
  plans.set(side, plan);
  return plan;
}

function butterflies(re: Float64Array, im: Float64Array, { cos, sin }: Plan): void {
  const side = re.length;
  for (let half = 1; half < side; half *= 2) {
    const stride = side / (2 * half);
    for (let start = 0; start < side; start += 2 * half)
      for (let i = 0; i < half; i++) {
        const p = start + i;
        const q = p + half;
        const c = cos[i * stride]!;
        const s = sin[i * stride]!;
        const tr = re[q]! * c - im[q]! * s;
        const ti = re[q]! * s + im[q]! * c;
        re[q] = re[p]! - tr;
        im[q] = im[p]! - ti;
        re[p]! += tr;
        im[p]! += ti;
      }
  }
}
