import type { Picture } from './picture.ts';
import type { Line, SideGuess } from './side-lines.ts';

/**
 * Whether it gets lighter across a line from inside to outside: the part of it, 0 to 1, along which it does, less the
 * part along which it gets darker.
 *
 *     paper | shadow  . .  lit table       a paper ends where it gets darker, or lighter at once; its shadow
 *     ------+ \_____/ ^                    ends where it gets lighter again
 *           ^ -1      +1
 *
 * Takes       the large picture and a line in its pixels with the sheet to its right as it runs.
 */
export function lighterOutside(picture: Picture, { from, to }: Pick<Line, 'from' | 'to'>): number {
  const length = Math.hypot(to.x - from.x, to.y - from.y);
  const out = { x: (to.y - from.y) / length, y: (from.x - to.x) / length };
  let sum = 0;
  for (let i = 0; i < PLACES; i++) {
    const t = 0.04 + (0.92 * (i + 0.5)) / PLACES;
    const x = from.x + t * (to.x - from.x);
    const y = from.y + t * (to.y - from.y);
    const change =
      lightAt(picture, x + BESIDE * out.x, y + BESIDE * out.y) -
      lightAt(picture, x - BESIDE * out.x, y - BESIDE * out.y);
    if (Math.abs(change) > CLEAR) sum += Math.sign(change);
  }
  return sum / PLACES;
}

const PLACES = 48;
/** Pixels off the line at which is looked: a shadow is a few pixels wide. */
const BESIDE = 1.4;
/** Sum of three encoded values that differ by noise alone. */
const CLEAR = 12;

function lightAt({ width, height, rgb }: Picture, x: number, y: number): number {
  const px = Math.min(width - 1, Math.max(0, Math.floor(x)));
  const py = Math.min(height - 1, Math.max(0, Math.floor(y)));
  const at = 3 * (py * width + px);
  return rgb[at]! + rgb[at + 1]! + rgb[at + 2]!;
}

/**
 * Which of the edges near a side have a shadow beside them: 1 for the edge of a paper, after which it gets dark and
 * soon light again, -1 for the end of its shadow, 0 for all others. The gap between two sheets is such a shadow too.
 *
 * Takes       the large picture, the edges, and how wide a shadow is at most, in its pixels.
 */
export function besideShadow(
  picture: Picture,
  edges: readonly SideGuess[],
  widest: number,
): number[] {
  const lighter = edges.map((edge) => lighterOutside(picture, edge));
  const of = edges.map(() => 0);
  edges.forEach((inner, i) => {
    edges.forEach((end, j) => {
      const wide = end.out - inner.out;
      if (wide <= 0 || wide > widest || lighter[j]! < LIGHT_AGAIN || end.borne < LIGHT_AGAIN)
        return;
      if (lighter[i]! > (wide < NARROW * widest ? -DARKER : -DARK)) return;
      of[i] = 1;
      of[j] = -1;
    });
  });
  return of;
}

/** A print may be darker than its shadow in places; the end of a shadow runs all along the side. */
const DARKER = 0.25;
/** Further off a row of motifs may get darker in places too. */
const DARK = 0.6;
const NARROW = 0.55;
const LIGHT_AGAIN = 0.7;
