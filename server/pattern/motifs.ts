import type { Labels } from '../colour/label-pixels.ts';
import { shapesOf } from './shapes.ts';

/** One printed shape: joined pixels of one colour, and how its outline faces. */
export interface Motif {
  readonly label: number;
  /** Length of its outline in pixels. */
  outline: number;
  /**
   * Sums over the outline of cos(k t) and sin(k t), where t is the direction that faces out (x right, y
   * down), for each k of WAVES in turn.
   */
  readonly waves: Float64Array;
  /** Sums over the outline of x, y, xx, yy and xy, by which a long shape tells how it lies. */
  readonly places: Float64Array;
}

/** Twofold waves see lines, three- and fivefold ones see what half a turn changes. */
export const WAVES = [2, 3, 5, 6] as const;

/**
 * The printed shapes and how their outlines face.
 *
 * Takes       which colour each pixel shows, and which colour is the ground.
 * Gives       the shapes whose outline is long enough to judge, in reading order of their first pixel.
 */
export function motifsOf(labels: Labels, ground: number): Motif[] {
  const { width, height, of } = labels;
  const { shape, first } = shapesOf(labels, ground);
  const motifs = first.map((pixel): Motif => ({
    label: of[pixel]!,
    outline: 0,
    waves: new Float64Array(2 * WAVES.length),
    places: new Float64Array(5),
  }));
  for (let y = AROUND; y < height - AROUND; y++)
    for (let at = y * width + AROUND, end = (y + 1) * width - AROUND; at < end; at++) {
      const label = of[at]!;
      if (
        label !== ground &&
        (label !== of[at + 1] ||
          label !== of[at - 1] ||
          label !== of[at + width] ||
          label !== of[at - width])
      )
        addOutline(motifs[shape[at]!]!, of, at, width);
    }
  return motifs.filter(({ outline }) => outline >= SHORTEST);
}

/** Half the side of the window in which the slant of an outline is judged. */
const AROUND = 2;
/** Shapes with a shorter outline are specks. */
const SHORTEST = 12;

function addOutline(motif: Motif, of: Uint8Array, at: number, width: number): void {
  let x = 0;
  let y = 0;
  for (let dy = -AROUND; dy <= AROUND; dy++)
    for (let dx = -AROUND, p = at + dy * width - AROUND; dx <= AROUND; dx++, p++)
      if (of[p] !== motif.label) {
        x += dx;
        y += dy;
      }
  if (x === 0 && y === 0) return;
  motif.outline += 1;
  const { waves, places } = motif;
  const row = Math.floor(at / width);
  const column = at - row * width;
  places[0]! += column;
  places[1]! += row;
  places[2]! += column * column;
  places[3]! += row * row;
  places[4]! += column * row;
  const first = waves.length * (SIDE * (y + FURTHEST) + x + FURTHEST);
  for (let wave = 0; wave < waves.length; wave++) waves[wave]! += WAVES_FACING[first + wave]!;
}

/** The furthest that what lies outside can lean to one side: all of it there. */
const FURTHEST = ((2 * AROUND + 1) * AROUND * (AROUND + 1)) / 2;
const SIDE = 2 * FURTHEST + 1;
/** The waves for each way to face, since there are only so many. */
const WAVES_FACING = Float64Array.from({ length: 2 * WAVES.length * SIDE * SIDE }, (_, index) => {
  const way = Math.floor(index / (2 * WAVES.length));
  const wave = WAVES[Math.floor((index % (2 * WAVES.length)) / 2)]!;
  const facing = Math.atan2(Math.floor(way / SIDE) - FURTHEST, (way % SIDE) - FURTHEST);
  return index % 2 === 0 ? Math.cos(wave * facing) : Math.sin(wave * facing);
});
