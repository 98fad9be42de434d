import type { VNode } from 'preact';
import type { Layer } from '../../server/contract/layouts.ts';
import { layerPath } from './layer-path.ts';
import { boxOf } from './place-layer.ts';

/** A paper of her pad that stands for one of the layout, so that she sees something true while she draws. */
export interface PaperShown {
  readonly picture: string;
  /** Size of the whole sheet in mm. */
  readonly width: number;
  readonly height: number;
}

/** The paper of a layer, at the scale of its print. A piece larger than the sheet shows it enlarged. */
export function LayerPaper({
  layer,
  paper,
}: {
  layer: Layer;
  paper: PaperShown | null;
}): VNode | null {
  if (paper === null) return null;
  const { x, y, width, height } = boxOf(layer);
  const scale = Math.max(1, width / paper.width, height / paper.height);
  const id = `paper-${layer.id}`;
  return (
    <>
      <clipPath id={id}>
        <path d={layerPath(layer)} />
      </clipPath>
      <image
        href={paper.picture}
        x={x}
        y={y}
        width={paper.width * scale}
        height={paper.height * scale}
        preserveAspectRatio="none"
        clip-path={`url(#${id})`}
      />
    </>
  );
}
