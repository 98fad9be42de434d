import { A6, SQUARE, US } from './designs/board.ts';
import type { Board } from './designs/board.ts';
import * as panels from './designs/panels.ts';
import * as slants from './designs/slants.ts';
import * as stamped from './designs/stamped.ts';
import * as strips from './designs/strips.ts';
import * as thrifty from './designs/thrifty.ts';
import * as triangles from './designs/triangles.ts';
import type { Layout } from './layout.ts';

type Design = (board: Board) => Layout;

/** From one paper to four, as she leafs through them. */
const DESIGNS: readonly Design[] = [
  panels.onePaper,
  strips.waistband,
  slants.slantedBand,
  slants.turnedCorners,
  panels.splitLow,
  panels.framed,
  slants.slantedSeam,
  slants.halved,
  panels.wideThird,
  panels.gate,
  strips.besideTwo,
  strips.ladder,
  strips.threeStrips,
  strips.pennants,
  strips.horizons,
  strips.steps,
  panels.fourPanes,
];

/** Those that use a pad up with hardly a scrap. */
const THRIFTY: readonly Design[] = [
  thrifty.wideOverTwo,
  thrifty.squareOverBand,
  thrifty.panelAboveBar,
];

/** Those with triangles in pairs, with a flap, with room for a stamp. */
const FURTHER: readonly Design[] = [
  triangles.fourCorners,
  triangles.sixTiles,
  stamped.stampedLabel,
  stamped.halfFront,
];

/** Those that also look well on a square card. */
const SQUARE_DESIGNS: readonly Design[] = [
  panels.onePaper,
  strips.waistband,
  slants.slantedBand,
  slants.turnedCorners,
  panels.framed,
  strips.besideTwo,
  strips.threeStrips,
  panels.fourPanes,
  triangles.fourCorners,
  stamped.stampedLabel,
  stamped.halfFront,
];

/** All our card designs: US, A6 and 13 x 13 cm, in this order. */
export const catalogue: readonly Layout[] = [
  ...[...DESIGNS, ...THRIFTY, ...FURTHER].map((design) => design(US)),
  ...[...DESIGNS, ...THRIFTY, ...FURTHER].map((design) => design(A6)),
  ...SQUARE_DESIGNS.map((design) => design(SQUARE)),
];
