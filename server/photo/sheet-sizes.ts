import type { PhotoPoint } from '../geometry/points.ts';
import { sidesOf } from '../geometry/quad.ts';
import { middleOf } from './find-sheets.ts';
import type { Candidate, Overview } from './find-sheets.ts';
import type { PhotoAsk } from './picture.ts';
import type { SidePair } from './sheets-from-lines.ts';
import type { StraightLine } from './straight-lines.ts';

/** Sheets are all of one size, so the nearest one tells how large a sheet is hereabouts. */
export function nearestSize(whole: readonly Candidate[]): (place: PhotoPoint) => SidePair {
  const known = whole.map(({ corners }) => {
    const [upper, right, lower, left] = sidesOf(corners);
    return { middle: middleOf(corners), width: (upper + lower) / 2, height: (left + right) / 2 };
  });
  return ({ x, y }) => {
    let [w, h, weight] = [0, 0, 0];
    for (const { middle, width, height } of known) {
      const near = 1 / (1 + (middle.x - x) ** 2 + (middle.y - y) ** 2);
      w += near * width;
      h += near * height;
      weight += near;
    }
    return { width: w / weight, height: h / weight };
  };
}

/** Part of the picture that a sheet covers at least, a sixth of what each of twelve does: smaller things are motifs. */
export const SHEET_PART = 0.01;

/** Sizes that a sheet may have when no sheet stands alone: what grown-together regions divide into, and long lines. */
export function sizesToTry(
  { candidates, unclear, image }: Overview,
  lines: readonly StraightLine[],
  ask: PhotoAsk,
): SidePair[] {
  const aspect =
    ask.sheetMillimetres === null ? 1 : ask.sheetMillimetres.width / ask.sheetMillimetres.height;
  const sizes: SidePair[] = [];
  const boxes = [
    ...candidates.map(({ corners }) => {
      const [upper, right, lower, left] = sidesOf(corners);
      return { width: (upper + lower) / 2, height: (left + right) / 2 };
    }),
    ...unclear.map(({ left, right, top, bottom }) => ({
      width: right - left,
      height: bottom - top,
    })),
  ];
  for (const { width, height } of boxes)
    for (let n = 1; n <= 6; n++)
      for (let m = 1; m <= 6; m++) {
        const off = Math.abs(Math.log(width / n / (height / m) / aspect));
        if (off < 0.07) sizes.push({ width: width / n, height: height / m });
      }
  for (const { pieces } of lines.slice(0, 60))
    for (const [from, to] of pieces)
      if (to - from > 60) sizes.push({ width: to - from, height: (to - from) / aspect });
  sizes.sort((p, q) => q.width - p.width);
  const apart: SidePair[] = [];
  for (const size of sizes)
    if (apart.every((other) => other.width / size.width > 1.025)) apart.push(size);
  const least = SHEET_PART * image.width * image.height;
  return apart.filter(({ width, height }) => width * height > least).slice(0, 16);
}

/** The size whose quads cover most, well borne out quads counting more. */
export function bestOver(
  sizes: readonly SidePair[],
  trial: (size: SidePair) => Candidate[],
): Candidate[] {
  let best: Candidate[] = [];
  let most = 0;
  for (const size of sizes) {
    const quads = trial(size);
    const value = quads.reduce((sum, { area, fill }) => sum + area * (fill - 0.45), 0);
    if (value > most) {
      most = value;
      best = quads;
    }
  }
  return best;
}
