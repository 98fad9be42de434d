import type { VNode } from 'preact';
import { boxOf } from './place-layer.ts';
import type { Element } from './elements.ts';
import { scallopPath, sprigPath } from './motifs.ts';

/** An element at its size, since what it shows is not known: a stamp as a sprig in ink, a die cut as a piece of paper. */
export function ElementDrawing({ element }: { element: Element }): VNode {
  const { x, y, width, height } = boxOf(element);
  const at = `translate(${x} ${y}) scale(${width} ${height})`;
  return (
    <>
      {element.kind === 'die-cut' && <path class="shade" transform={at} d={scallopPath} />}
      {element.kind === 'die-cut' && <path class="piece" transform={at} d={scallopPath} />}
      <path
        class="sprig"
        transform={element.kind === 'stamp' ? at : `${at} translate(0.2 0.2) scale(0.6)`}
        d={sprigPath}
      />
      <rect class="frame" x={x} y={y} width={width} height={height} />
    </>
  );
}
