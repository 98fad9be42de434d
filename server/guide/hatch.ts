import type { Line, Outline, Spot } from './drawing.ts';

/**
 * Fills an outline with parallel lines, drawn line by line so that no renderer needs patterns.
 *
 * Takes       the outline (any simple polygon), the distance of the lines in mm and their angle in
 *             degrees, clockwise from the horizontal.
 * Gives       the parts of the lines that lie inside.
 */
export function hatch(
  outline: Outline,
  spacing: number,
  angle: number,
  style: Pick<Line, 'width' | 'colour'>,
): Line[] {
  const turn = (angle * Math.PI) / 180;
  const [cos, sin] = [Math.cos(turn), Math.sin(turn)];
  const laid = outline.map(({ x, y }) => ({ x: cos * x + sin * y, y: cos * y - sin * x }));
  const back = ({ x, y }: Spot): Spot => ({ x: cos * x - sin * y, y: sin * x + cos * y });
  const heights = laid.map(({ y }) => y);
  const lines: Line[] = [];
  const first = Math.ceil(Math.min(...heights) / spacing + 1e-6);
  const last = Math.floor(Math.max(...heights) / spacing - 1e-6);
  for (let row = first; row <= last; row++) {
    const y = row * spacing;
    const crossings = crossingsAt(laid, y);
    for (let at = 0; at + 1 < crossings.length; at += 2)
      lines.push({
        kind: 'line',
        from: back({ x: crossings[at]!, y }),
        to: back({ x: crossings[at + 1]!, y }),
        ...style,
      });
  }
  return lines;
}

/** Where a level line crosses the outline, from left to right. */
function crossingsAt(outline: Outline, y: number): number[] {
  return outline
    .flatMap((p, index) => {
      const q = outline[(index + 1) % outline.length]!;
      if (p.y > y === q.y > y) return [];
      return [p.x + ((y - p.y) / (q.y - p.y)) * (q.x - p.x)];
    })
    .sort((a, b) => a - b);
}
