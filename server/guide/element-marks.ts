import type { Element } from '../layouts/layout.ts';
import { toMillimetres } from '../lengths/length.ts';
import { moved, rectangle } from './drawing.ts';
import type { Line, Mark, Outline } from './drawing.ts';
import { scallop, sprig } from './motifs.ts';

const STROKE = '#3a4246';
const CARD = { face: '#f4ead6', raised: '#e0d0ad', edge: '#7b6f58' } as const;

/**
 * Where something is stamped or a die cut is glued, at its size: what it shows is not known. A stamp is a
 * sprig in ink within a dashed frame, a die cut a scalloped piece of paper that throws a shadow.
 */
export function elementMarks(elements: readonly Element[] = []): Mark[] {
  return elements.flatMap((element) =>
    element.kind === 'stamp' ? stampMarks(element) : dieCutMarks(element),
  );
}

function stampMarks({ box }: Element): Mark[] {
  const { x, y, ...size } = inMillimetres(box);
  const { stem, leaves } = sprig(x, y, size);
  const pen = 0.02 * Math.min(size.width, size.height);
  return [
    { kind: 'stroke', spots: stem, width: pen, colour: STROKE },
    ...leaves.map((corners): Mark => ({
      kind: 'area',
      corners,
      fill: '#8a9698',
      edge: { width: pen, colour: STROKE },
    })),
    ...frame(rectangle(x, y, size.width, size.height)),
  ];
}

function dieCutMarks({ box }: Element): Mark[] {
  const { x, y, width, height } = inMillimetres(box);
  const piece = scallop(x, y, { width, height });
  const inner = { width: 0.6 * width, height: 0.6 * height };
  const { stem, leaves } = sprig(x + 0.2 * width, y + 0.2 * height, inner);
  const edge = { width: 0.25, colour: CARD.edge };
  return [
    { kind: 'area', corners: moved(piece, 0.25, 0.4), fill: '#1b1a17', opacity: 0.25 },
    { kind: 'area', corners: moved(piece, 0.5, 0.8), fill: '#1b1a17', opacity: 0.18 },
    { kind: 'area', corners: piece, fill: CARD.face, edge },
    { kind: 'stroke', spots: stem, width: 0.3, colour: CARD.edge },
    ...leaves.map((corners): Mark => ({ kind: 'area', corners, fill: CARD.raised, edge })),
  ];
}

function inMillimetres(box: Element['box']): {
  x: number;
  y: number;
  width: number;
  height: number;
} {
  return {
    x: toMillimetres(box.x),
    y: toMillimetres(box.y),
    width: toMillimetres(box.width),
    height: toMillimetres(box.height),
  };
}

function frame(corners: Outline): Line[] {
  return corners.map((from, at) => ({
    kind: 'line',
    from,
    to: corners[(at + 1) % corners.length]!,
    width: 0.35,
    colour: STROKE,
    dashes: [1.2, 0.9],
  }));
}
