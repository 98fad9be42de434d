import type { Mark, Spot, Words } from '../../server/guide/drawing.ts';
import { widthOf } from '../../server/guide/letters.ts';

/** Where a place in a mark's own measure falls on the page. Written apart from the renderers. */
export type Place = (spot: Spot) => Spot;

export interface FlatMark {
  readonly mark: Exclude<Mark, { kind: 'group' }>;
  readonly place: Place;
  /** The innermost outline that it is clipped to, on the page. */
  readonly clip: readonly Spot[] | null;
}

/** All marks of a drawing with their groups resolved. */
export function flat(
  marks: readonly Mark[],
  place: Place = (spot) => spot,
  clip: readonly Spot[] | null = null,
): FlatMark[] {
  return marks.flatMap((mark) => {
    if (mark.kind !== 'group') return [{ mark, place, clip }];
    const angle = ((mark.turned ?? 0) * Math.PI) / 180;
    const [cos, sin, by] = [Math.cos(angle), Math.sin(angle), mark.scale ?? 1];
    const inner: Place = ({ x, y }) =>
      place({ x: mark.x + by * (cos * x - sin * y), y: mark.y + by * (sin * x + cos * y) });
    return flat(mark.marks, inner, mark.clip === undefined ? clip : mark.clip.map(inner));
  });
}

/** All that is written, in order. */
export function textOf(marks: readonly Mark[]): string[] {
  return flat(marks).flatMap(({ mark }) => (mark.kind === 'words' ? [mark.text] : []));
}

/** The four corners of a mark's own box; words from their line up to a capital's height. */
export function cornersOf({ mark, place }: FlatMark): Spot[] {
  switch (mark.kind) {
    case 'words':
      return wordsBox(mark).map(place);
    case 'line':
      return [mark.from, mark.to].map(place);
    case 'stroke':
      return mark.spots.map(place);
    case 'area':
      return mark.corners.map(place);
    case 'picture': {
      const { x, y, width, height } = mark;
      return [
        { x, y },
        { x: x + width, y },
        { x: x + width, y: y + height },
        { x, y: y + height },
      ].map(place);
    }
  }
}

function wordsBox({ x, y, text, size, bold, align }: Words): Spot[] {
  const width = widthOf(text, size, bold);
  const left = align === 'right' ? x - width : align === 'middle' ? x - width / 2 : x;
  return [
    { x: left, y: y - 0.67 * size },
    { x: left + width, y: y - 0.67 * size },
    { x: left + width, y },
    { x: left, y },
  ];
}
