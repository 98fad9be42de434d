import type { VNode } from 'preact';
import type { Ruler } from '../lengths/lengths.ts';

interface Props {
  /** Of the card, in mm. */
  readonly width: number;
  readonly height: number;
  readonly ruler: Ruler;
}

/** Millimetres from tick to tick, and how many ticks there are to a number: quarters of an inch, or 5 mm and 2 cm. */
const ticks = { in: { step: 6.35, each: 4 }, mm: { step: 5, each: 4 } } as const;

/** Her ruler along the upper and the left edge of the card. */
export function RulerEdges({ width, height, ruler }: Props): VNode {
  const { step, each } = ticks[ruler];
  const upTo = (length: number): number[] =>
    Array.from({ length: Math.floor(length / step + 1e-6) + 1 }, (_, n) => n);
  const long = (n: number): number => (n % each === 0 ? 3.2 : n % 2 === 0 ? 2.2 : 1.4);
  const across = upTo(width).map((n) => `M${n * step} -1.2v${-long(n)}`);
  const down = upTo(height).map((n) => `M-1.2 ${n * step}h${-long(n)}`);
  const named = (n: number): boolean => n > 0 && n % each === 0;
  const name = (n: number): string => String(ruler === 'mm' ? n * step : n / each);
  return (
    <g class="ruler-edges">
      <path d={[...across, ...down].join('')} />
      {upTo(width)
        .filter(named)
        .map((n) => (
          <text key={n} x={n * step} y={-5.2} text-anchor="middle">
            {name(n)}
          </text>
        ))}
      {upTo(height)
        .filter(named)
        .map((n) => (
          <text key={n} x={-5.2} y={n * step + 1.1} text-anchor="end">
            {name(n)}
          </text>
        ))}
    </g>
  );
}
