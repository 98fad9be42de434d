import { toMillimetres } from '../lengths/length.ts';
import type { Element, Layer, Layout, Role } from '../layouts/layout.ts';
import { outline } from '../layouts/outline.ts';
import { papersOf } from '../layouts/papers-of.ts';
import type { Mark } from './drawing.ts';
import { elementMarks } from './element-marks.ts';
import { foldMarks } from './fold-marks.ts';
import { greetingMarks } from './greeting-marks.ts';
import { hatch } from './hatch.ts';
import { svgOf } from './svg.ts';

/** Room for half an edge, in mm. */
const ROOM = 1;
const EDGE = { width: 0.7, colour: '#3a4246' };

const TINTS: Readonly<Record<Role, string>> = {
  base: '#ffffff',
  mat: '#d8d3c8',
  panel: '#c9dcdc',
  strip: '#f0cfc3',
  focal: '#f3e2b0',
  greeting: '#ffffff',
};

/** Hatch of the first, second ... paper of a card: told apart without colour. */
const HATCHES: readonly (readonly [spacing: number, angle: number])[] = [
  [4, 45],
  [4, -45],
  [3, 0],
  [3, 90],
  [2.2, 20],
  [2.2, -70],
];

/**
 * A small drawing of a layout: every role has its tint, every paper its own hatch, so that papers are told
 * apart without colour; cardstock is plain, the greeting has the word for it, what is stamped or glued on
 * stands at its size.
 */
export function layoutDrawing(layout: Layout): string {
  const papers = papersOf(layout);
  const [base, ...upper] = layout.layers.map((layer) =>
    layerMarks(layer, papers, layout.elements ?? []),
  );
  const size = {
    width: toMillimetres(layout.card.width) + 2 * ROOM,
    height: toMillimetres(layout.card.height) + 2 * ROOM,
  };
  const marks = [...base!, ...foldMarks(layout), ...upper.flat(), ...elementMarks(layout.elements)];
  return svgOf(marks, size, { x: -ROOM, y: -ROOM }, `layout-${layout.id}`);
}

function layerMarks(layer: Layer, papers: readonly string[], elements: readonly Element[]): Mark[] {
  const corners = outline(layer);
  const face: Mark = { kind: 'area', corners, fill: TINTS[layer.role], edge: EDGE };
  if (layer.material === 'patterned') {
    const [spacing, angle] = HATCHES[papers.indexOf(layer.paper) % HATCHES.length]!;
    return [face, ...hatch(corners, spacing, angle, { width: 0.45, colour: '#3a424699' })];
  }
  return layer.role === 'greeting' ? [face, ...greetingMarks(layer, elements)] : [face];
}
