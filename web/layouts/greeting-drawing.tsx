import type { VNode } from 'preact';
import type { Layer } from '../../server/contract/layouts.ts';
import type { Element } from './elements.ts';
import { HIGH, greetingWord } from './greeting-word.ts';
import { greetingPath } from './motifs.ts';

interface Props {
  readonly layer: Layer;
  readonly elements: readonly Element[];
}

/** The word for what will be stamped on a greeting. */
export function GreetingDrawing({ layer, elements }: Props): VNode | null {
  if (layer.role !== 'greeting') return null;
  const { long, upright, box } = greetingWord(layer, elements);
  const turned = upright ? ' rotate(90)' : '';
  return (
    <path
      class="written"
      transform={`translate(${box.x + box.width / 2} ${box.y + box.height / 2})${turned} scale(${long}) translate(-0.5 ${-HIGH / 2})`}
      d={greetingPath}
    />
  );
}
