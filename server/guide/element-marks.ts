import type { Element, Layer } from '../layouts/layout.ts';
import { outline } from '../layouts/outline.ts';
import { toMillimetres } from '../lengths/length.ts';
import { moved } from './drawing.ts';
import type { Line, Mark, Outline, Spot } from './drawing.ts';
import { hatch } from './hatch.ts';

const STROKE = '#3a4246';

/**
 * Where something is stamped or a die cut is glued, at its size: what it shows is not known. A stamp is a
 * dashed frame with a hatched round in it, a die cut a plain round of paper that throws a shadow.
 */
export function elementMarks(elements: readonly Element[] = []): Mark[] {
  return elements.flatMap((element) =>
    element.kind === 'stamp' ? stampMarks(element) : dieCutMarks(element),
  );
}

function stampMarks(element: Element): Mark[] {
  const round = roundOf(element);
  return [
    ...hatch(round, 1.1, 30, { width: 0.3, colour: `${STROKE}cc` }),
    { kind: 'area', corners: round, edge: { width: 0.4, colour: STROKE } },
    ...frame(element),
  ];
}

function dieCutMarks(element: Element): Mark[] {
  const round = roundOf(element);
  return [
    { kind: 'area', corners: moved(round, 0.3, 0.5), fill: '#1b1a17', opacity: 0.22 },
    { kind: 'area', corners: round, fill: '#fffdf8', edge: { width: 0.45, colour: STROKE } },
  ];
}

function roundOf({ id, layer, box }: Element): Outline {
  const round: Layer = {
    id,
    role: 'focal',
    material: 'cardstock',
    paper: layer,
    box,
    shape: { kind: 'circle' },
  };
  return outline(round);
}

function frame({ box }: Element): Line[] {
  const [left, top] = [toMillimetres(box.x), toMillimetres(box.y)];
  const [right, bottom] = [left + toMillimetres(box.width), top + toMillimetres(box.height)];
  const corners: readonly Spot[] = [
    { x: left, y: top },
    { x: right, y: top },
    { x: right, y: bottom },
    { x: left, y: bottom },
  ];
  return corners.map((from, at) => ({
    kind: 'line',
    from,
    to: corners[(at + 1) % 4]!,
    width: 0.35,
    colour: STROKE,
    dashes: [1.2, 0.9],
  }));
}
