import type { VNode } from 'preact';
import type { Layer } from '../../server/contract/layouts.ts';
import { greetingPath } from './motifs.ts';
import { boxOf } from './place-layer.ts';

/** Height of the word where it is 1 long, and the most of its strip that it takes. */
const [HIGH, ALONG, ACROSS] = [0.42, 0.72, 0.66] as const;

/** The word for what will be stamped on a greeting, along its longer side. */
export function GreetingDrawing({ layer }: { layer: Layer }): VNode | null {
  if (layer.role !== 'greeting') return null;
  const { x, y, width, height } = boxOf(layer);
  const upright = height > width;
  const long = Math.min(ALONG * Math.max(width, height), (ACROSS * Math.min(width, height)) / HIGH);
  const turned = upright ? ' rotate(90)' : '';
  return (
    <path
      class="written"
      transform={`translate(${x + width / 2} ${y + height / 2})${turned} scale(${long}) translate(-0.5 ${-HIGH / 2})`}
      d={greetingPath}
    />
  );
}
