import type { VNode } from 'preact';
import { encode } from 'uqr';
import { phoneWords } from '../words/phone.ts';

/** Light modules left free around the picture, as ISO/IEC 18004 asks for. */
const QUIET = 4;

/** An address as a QR picture (ISO/IEC 18004), dark on light in either look of the page, as cameras want it. */
export function CodePicture({ text }: { text: string }): VNode {
  const { data, size } = encode(text, { ecc: 'M', border: 0 });
  const dark = data.flatMap((row, y) => row.flatMap((on, x) => (on ? [`M${x} ${y}h1v1h-1z`] : [])));
  const whole = size + 2 * QUIET;
  return (
    <svg
      class="code-picture"
      role="img"
      aria-label={phoneWords.picture}
      viewBox={`${-QUIET} ${-QUIET} ${whole} ${whole}`}
      shape-rendering="crispEdges"
    >
      <rect x={-QUIET} y={-QUIET} width={whole} height={whole} fill="#ffffff" />
      <path d={dark.join('')} fill="#000000" />
    </svg>
  );
}
