import type { Lab } from '../colour/lab.ts';
import { labFromHex } from '../colour/spaces.ts';
import type { Box, Element, Layer } from '../layouts/layout.ts';
import { toMillimetres, units } from '../lengths/length.ts';
import type { Mark, Spot, Stroke } from './drawing.ts';
import { writtenGreeting } from './handwriting.ts';
import type { Paint } from './paint.ts';

const WRITTEN = writtenGreeting();
/** Height of the word where it is 1 long. */
const HIGH = Math.max(...WRITTEN.flat().map(({ y }) => y));
/** The most of a layer's length and height that the word takes, and its longest, in mm. */
const [ALONG, ACROSS, LONGEST] = [0.72, 0.66, 62] as const;
const PEN = 0.013;
const [DARK, LIGHT] = ['#3a4246', '#ffffff'] as const;

/**
 * The word 'greeting', faint, where words will be stamped: without it a strip for them looks like one that was
 * forgotten. It runs along the longer side and leaves what is stamped or glued at that end alone.
 */
export function greetingMarks(
  layer: Layer,
  elements: readonly Element[] = [],
  paint: Paint = { kind: 'colour', hex: LIGHT },
): Mark[] {
  const box = freeOf(layer, elements);
  const [x, y] = [toMillimetres(box.x), toMillimetres(box.y)];
  const [width, height] = [toMillimetres(box.width), toMillimetres(box.height)];
  const upright = layer.box.height > layer.box.width;
  const [along, across] = upright ? [height, width] : [width, height];
  const long = Math.min(ALONG * along, (ACROSS * across) / HIGH, LONGEST);
  const middle = { x: x + width / 2, y: y + height / 2 };
  const spotOf = (spot: Spot): Spot => {
    const [u, v] = [(spot.x - 0.5) * long, (spot.y - HIGH / 2) * long];
    return upright ? { x: middle.x - v, y: middle.y + u } : { x: middle.x + u, y: middle.y + v };
  };
  const strokes = WRITTEN.map((stroke) => stroke.map(spotOf));
  const written = (colour: string, width: number, opacity: number): Stroke[] =>
    strokes.map((spots) => ({ kind: 'stroke', spots, width, colour, opacity }));
  const pen = PEN * long;
  // On a print the word lies on light of its own, or it would be lost among the drawing.
  return paint.kind === 'paper'
    ? [...written(LIGHT, 4 * pen, 0.75), ...written(DARK, pen, 0.8)]
    : written(isDark(labFromHex(paint.hex)) ? LIGHT : DARK, pen, 0.62);
}

function isDark({ l }: Lab): boolean {
  return l < 55;
}

/** The greeting's own part, right of what is stamped or glued at its left end. */
function freeOf({ id, box }: Layer, elements: readonly Element[]): Box {
  const ends = elements
    .filter((one) => one.layer === id && one.box.x + one.box.width / 2 < box.x + box.width / 2)
    .map((one) => one.box.x + one.box.width - box.x);
  const taken = Math.max(0, ...ends);
  return { ...box, x: units(box.x + taken), width: units(box.width - taken) };
}
