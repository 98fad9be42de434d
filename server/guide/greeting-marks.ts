import type { Lab } from '../colour/lab.ts';
import { labFromHex } from '../colour/spaces.ts';
import { ACROSS, ALONG, LONGEST, greetingRoom } from '../layouts/greeting-room.ts';
import type { Element, Layer } from '../layouts/layout.ts';
import { toMillimetres, units } from '../lengths/length.ts';
import type { Mark, Spot, Stroke } from './drawing.ts';
import { writtenGreeting } from './handwriting.ts';
import type { Paint } from './paint.ts';

const WRITTEN = writtenGreeting();
/** Height of the word where it is 1 long. */
const HIGH = Math.max(...WRITTEN.flat().map(({ y }) => y));
const PEN = 0.013;
const [DARK, LIGHT] = ['#3a4246', '#ffffff'] as const;

/**
 * The word 'greeting', faint, where words will be stamped: without it a strip for them looks like one that was
 * forgotten. It runs along the longer side, where nothing is stamped or glued.
 */
export function greetingMarks(
  layer: Layer,
  elements: readonly Element[] = [],
  paint: Paint = { kind: 'colour', hex: LIGHT },
): Mark[] {
  const on = elements.filter((one) => one.layer === layer.id);
  const room = greetingRoom(
    layer.box,
    on.map(({ box }) => box),
  );
  const [x, y, width, height] = [room.x, room.y, room.width, room.height].map((length) =>
    toMillimetres(units(length)),
  ) as [number, number, number, number];
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
