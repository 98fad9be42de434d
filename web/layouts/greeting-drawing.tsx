import type { VNode } from 'preact';
import type { Layer } from '../../server/contract/layouts.ts';
import { ACROSS, ALONG, LONGEST, greetingRoom } from '../../server/layouts/greeting-room.ts';
import type { Element } from './elements.ts';
import { greetingPath } from './motifs.ts';
import { boxOf } from './place-layer.ts';

/** Height of the word where it is 1 long. */
const HIGH = 0.411;

interface Props {
  readonly layer: Layer;
  readonly elements: readonly Element[];
}

/** The word for what will be stamped on a greeting, along its longer side, where nothing else is stamped or glued. */
export function GreetingDrawing({ layer, elements }: Props): VNode | null {
  if (layer.role !== 'greeting') return null;
  const whole = boxOf(layer);
  const on = elements.filter((one) => one.layer === layer.id);
  const { x, y, width, height } = greetingRoom(whole, on.map(boxOf));
  const upright = whole.height > whole.width;
  const [along, across] = upright ? [height, width] : [width, height];
  const long = Math.min(ALONG * along, (ACROSS * across) / HIGH, LONGEST);
  const turned = upright ? ' rotate(90)' : '';
  return (
    <path
      class="written"
      transform={`translate(${x + width / 2} ${y + height / 2})${turned} scale(${long}) translate(-0.5 ${-HIGH / 2})`}
      d={greetingPath}
    />
  );
}
