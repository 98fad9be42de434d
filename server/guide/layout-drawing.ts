import { toMillimetres, units } from '../lengths/length.ts';
import type { Box, Element, Layer, Layout, Role } from '../layouts/layout.ts';
import { outline } from '../layouts/outline.ts';
import { papersOf } from '../layouts/papers-of.ts';
import type { Line, Mark } from './drawing.ts';
import { elementMarks } from './element-marks.ts';
import { foldMarks } from './fold-marks.ts';
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
 * apart without colour; cardstock is plain, the greeting has two written lines, what is stamped or glued on
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
  return layer.role === 'greeting' ? [face, ...writing(layer, freeOf(layer, elements))] : [face];
}

/** The greeting's own part, right of what is stamped or glued at its left end. */
function freeOf({ id, box }: Layer, elements: readonly Element[]): Box {
  const ends = elements
    .filter((one) => one.layer === id && one.box.x + one.box.width / 2 < box.x + box.width / 2)
    .map((one) => one.box.x + one.box.width - box.x);
  const taken = Math.max(0, ...ends);
  return { ...box, x: units(box.x + taken), width: units(box.width - taken) };
}

/** Two lines where a greeting is stamped, along the longer side. */
function writing({ box: whole }: Layer, box: Box): Line[] {
  const [x, y] = [toMillimetres(box.x), toMillimetres(box.y)];
  const [width, height] = [toMillimetres(box.width), toMillimetres(box.height)];
  const style = { width: 0.7, colour: '#3a4246' };
  return [0.38, 0.62].map((part, index): Line => {
    const [from, to] = index === 0 ? [0.18, 0.82] : [0.28, 0.72];
    return whole.width >= whole.height
      ? {
          kind: 'line',
          from: { x: x + from * width, y: y + part * height },
          to: { x: x + to * width, y: y + part * height },
          ...style,
        }
      : {
          kind: 'line',
          from: { x: x + part * width, y: y + from * height },
          to: { x: x + part * width, y: y + to * height },
          ...style,
        };
  });
}
