import { difference } from 'polyclip-ts';
import { polygonArea } from '../geometry/polygon.ts';
import { exactLength } from '../lengths/format-length.ts';
import { INCH, toMillimetres, units } from '../lengths/length.ts';
import type { Ruler } from '../lengths/length.ts';
import { Refusal, expected } from '../refusals/refusal.ts';
import type { Box, Element, Layout } from './layout.ts';
import { visibleLayers } from './visible-layers.ts';
import type { VisibleLayer } from './visible-layers.ts';

type Ring = [number, number][];

/** Nearer than this to an edge or to another layer it looks crowded (common practice, no source). */
const AIR = INCH / 8;
/** Parts smaller than this (mm²) are slivers of rounding. */
const SLIVER = 0.01;

/** Refuses a stamped or die-cut element that has no room on what is seen of its layer. */
export function checkElements(layout: Layout): void {
  const seen = visibleLayers(layout);
  for (const [at, element] of (layout.elements ?? []).entries()) {
    const field = `elements[${at}]`;
    const home = seen.find(({ layer }) => layer === element.layer);
    if (home === undefined)
      throw expected(
        'a layer of this layout',
        `${field}.layer`,
        element.layer,
        'Say on which layer it is stamped or glued.',
        'not-found',
      );
    if (outside(element.box, home) > SLIVER)
      throw new Refusal({
        kind: 'does-not-fit',
        field: `${field}.box`,
        received: element.box,
        message: `Expected ${elementSaid(element, 'in')} to have room on what is seen of "${element.layer}" but it does not fit there`,
        mend: 'Choose the layer it lies on, move it, choose a smaller one, or give the layer more room, before anything is cut.',
      });
  }
}

/** Elements that fit, but stand so near to an edge or to another layer that they crowd it. */
export function crowding({ elements = [], ...layout }: Layout): Element[] {
  const seen = visibleLayers(layout);
  return elements.filter(({ box, layer }) => {
    const home = seen.find((one) => one.layer === layer);
    return home !== undefined && outside(grown(box), home) > SLIVER;
  });
}

/** 'the die cut "leaf" (1 1/4 x 2 in)'; one that bears no name of its own by its number: 'stamp 1 (1 x 1 in)'. */
export function elementSaid({ id, kind, box }: Element, ruler: Ruler): string {
  const size = `${exactLength(box.width, ruler)} x ${exactLength(box.height, ruler)}`;
  const said = kind === 'stamp' ? 'stamp' : 'die cut';
  const number = /^(?:stamp|die-cut)-(\d+)$/.exec(id)?.[1];
  return number === undefined ? `the ${said} "${id}" (${size})` : `${said} ${number} (${size})`;
}

/** How much of a box, in mm², lies beside what is seen of a layer. */
function outside(box: Box, { parts }: VisibleLayer): number {
  const rings = parts.map(({ outer, holes }) => [outer, ...holes].map(ringOf));
  const left = rings.length === 0 ? [[corners(box)]] : difference([corners(box)], ...rings);
  return left.reduce(
    (sum, [outer, ...holes]) =>
      sum + areaOf(outer!) - holes.reduce((inner, hole) => inner + areaOf(hole), 0),
    0,
  );
}

function ringOf(polygon: readonly { x: number; y: number }[]): Ring {
  return polygon.map(({ x, y }): [number, number] => [x, y]);
}

function corners({ x, y, width, height }: Box): Ring {
  const [left, top] = [toMillimetres(x), toMillimetres(y)];
  const [right, bottom] = [left + toMillimetres(width), top + toMillimetres(height)];
  return [
    [left, top],
    [right, top],
    [right, bottom],
    [left, bottom],
  ];
}

function areaOf(ring: readonly (readonly [number, number])[]): number {
  return polygonArea(ring.map(([x, y]) => ({ x, y })));
}

function grown({ x, y, width, height }: Box): Box {
  return {
    x: units(x - AIR),
    y: units(y - AIR),
    width: units(width + 2 * AIR),
    height: units(height + 2 * AIR),
  };
}
