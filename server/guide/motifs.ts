import type { Extent, Outline, Spot } from './drawing.ts';

/** Lobes round a die-cut piece, and how deep the notches between them go, as a part of its radius. */
const [LOBES, NOTCH] = [20, 0.08] as const;
/** Corners of the outline from one notch to the next. */
const STEPS = 6;

/** The outline of a die-cut piece of which only the size is known: a scalloped round that touches its box. */
export function scallop(x: number, y: number, { width, height }: Extent): Outline {
  const count = LOBES * STEPS;
  return Array.from({ length: count }, (_, step) => {
    const angle = (2 * Math.PI * step) / count;
    // The middle of a lobe lies where the round touches its box.
    const radius = 1 - NOTCH * (1 - Math.abs(Math.cos((LOBES * angle) / 2)));
    return {
      x: x + (width / 2) * (1 + radius * Math.cos(angle)),
      y: y + (height / 2) * (1 + radius * Math.sin(angle)),
    };
  });
}

export interface Sprig {
  readonly stem: readonly [Spot, Spot];
  readonly leaves: readonly Outline[];
}

/** A sprig of seven leaves in a box, as a sign of a picture of which only the size is known. */
export function sprig(x: number, y: number, { width, height }: Extent): Sprig {
  const place = (spot: Spot): Spot => ({ x: x + spot.x * width, y: y + spot.y * height });
  const pairs = [0.78, 0.58, 0.38].flatMap((at) => [leaf(at, -SPREAD), leaf(at, SPREAD)]);
  return {
    stem: [place({ x: 0.5, y: 0.96 }), place({ x: 0.5, y: 0.3 })],
    leaves: [leaf(0.32, 0), ...pairs].map((one) => one.map(place)),
  };
}

/** How far a leaf leans from the stem (radians), how long it is and how wide to one side. */
const [SPREAD, LONG, WIDE] = [0.95, 0.28, 0.2] as const;
const EDGE = 6;

/** A leaf that grows from a height of the stem, both its ends pointed. */
function leaf(at: number, lean: number): Spot[] {
  const [cos, sin] = [Math.cos(lean), Math.sin(lean)];
  const place = (along: number, aside: number): Spot => ({
    x: 0.5 + LONG * (along * sin + aside * cos),
    y: at - LONG * (along * cos - aside * sin),
  });
  const aside = (along: number): number => WIDE * Math.sin(Math.PI * along);
  const ways = Array.from({ length: EDGE }, (_, step) => step / EDGE);
  return [
    ...ways.map((along) => place(along, aside(along))),
    ...ways.map((along) => place(1 - along, -aside(1 - along))),
  ];
}
