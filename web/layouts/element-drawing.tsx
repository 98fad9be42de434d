import type { VNode } from 'preact';
import { boxOf } from './place-layer.ts';
import type { Element } from './elements.ts';

/** An element at its size, as a plain round, since what it shows is not known: a stamp dashed, a die cut as paper. */
export function ElementDrawing({ element }: { element: Element }): VNode {
  const { x, y, width, height } = boxOf(element);
  return (
    <>
      <ellipse cx={x + width / 2} cy={y + height / 2} rx={width / 2} ry={height / 2} />
      <rect class="frame" x={x} y={y} width={width} height={height} />
    </>
  );
}
