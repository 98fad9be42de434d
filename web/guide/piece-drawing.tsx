import type { VNode } from 'preact';
import { guideWords } from '../words/guide.ts';
import type { Shown, Spot } from './step.ts';

type Finish = Extract<Shown, { kind: 'finish' }>;
type Base = Extract<Shown, { kind: 'base' }>;

/** A piece by itself as it lies on its card: what stays of it, its pencil marks, and its up. */
export function FinishDrawing({ piece, kept, marks }: Finish): VNode {
  const { width, height } = piece;
  const room = 0.14 * Math.max(width, height);
  const unit = Math.max(width, height) / 100;
  const up = middleOf(kept);
  return (
    <svg
      class="piece-drawing"
      viewBox={`${-room} ${-room} ${width + 2 * room} ${height + 2 * room}`}
      role="img"
      aria-label={guideWords.finishDrawn}
    >
      <rect class="falls" width={width} height={height} stroke-width={unit} />
      <path class="stays" d={`${outline(kept)}Z`} stroke-width={unit} />
      <path
        class="up"
        d={`M${up.x} ${up.y - 9 * unit}l5 7h-3.4v9h-3.2v-9h-3.4z`}
        transform={scaledAt(up.x, up.y - 9 * unit, unit)}
      />
      {marks.length === 2 && (
        <path class="blade" d={outline(marks)} style={{ strokeWidth: `${1.4 * unit}` }} />
      )}
      {marks.map(({ x, y }) => (
        <circle key={`${x} ${y}`} class="mark" cx={x} cy={y} r={3 * unit} stroke-width={unit} />
      ))}
    </svg>
  );
}

/** The flat base in the colour of its cardstock with its scores, pale under their lines so that dark cardstock shows them, each with its length from the edge. */
export function BaseDrawing({ hex, flat, from, scores }: Base): VNode {
  const { width, height } = flat;
  const unit = Math.max(width, height) / 100;
  const side = from === 'left';
  return (
    <svg
      class="piece-drawing"
      viewBox={`${-2 * unit} ${-2 * unit} ${width + 4 * unit} ${height + 4 * unit}`}
      role="img"
      aria-label={guideWords.baseDrawn}
    >
      <rect
        class="stays"
        style={hex === null ? undefined : { fill: hex }}
        width={width}
        height={height}
        stroke-width={0.7 * unit}
      />
      {scores.map(({ at, said }, index) => {
        // Several measures stand one under the other.
        const along = ((side ? height : width) * (index + 1)) / (scores.length + 1);
        const wide = (3.9 * said.length + 4) * unit;
        const scored = side ? `M${at} 0V${height}` : `M0 ${at}H${width}`;
        const measured = side ? `M0 ${along}H${at}` : `M${along} 0V${at}`;
        const long = (side ? wide : 9.2 * unit) + 3 * unit;
        const middleAt = labelAt(
          at,
          scores.map((one) => one.at),
          side ? width : height,
          long,
        );
        const middle = side ? { x: middleAt, y: along } : { x: along, y: middleAt };
        return (
          <g key={said}>
            <path class="measure-under" d={`${scored}${measured}`} />
            <path
              class="score"
              d={scored}
              stroke-width={unit}
              stroke-dasharray={`${1.2 * unit} ${2.4 * unit}`}
            />
            <path class="measure" d={measured} stroke-width={0.8 * unit} />
            <rect
              class="said"
              x={middle.x - wide / 2}
              y={middle.y - 4.6 * unit}
              width={wide}
              height={9.2 * unit}
            />
            <text x={middle.x} y={middle.y + 2.5 * unit} font-size={7 * unit} text-anchor="middle">
              {said}
            </text>
          </g>
        );
      })}
    </svg>
  );
}

/** The middle of a label so long: clear of the score lines, before its own where there is room, else behind it. */
function labelAt(at: number, scores: readonly number[], end: number, long: number): number {
  const before = Math.max(0, ...scores.filter((score) => score < at));
  if (at - before >= long) return (before + at) / 2;
  const after = Math.min(end, ...scores.filter((score) => score > at));
  return after - at >= long ? at + long / 2 : (before + at) / 2;
}

function outline(spots: readonly Spot[]): string {
  return `M${spots.map(({ x, y }) => `${x} ${y}`).join('L')}`;
}

/** The middle of an outline's area, by the sum of its triangles from the first corner. */
function middleOf(corners: readonly Spot[]): Spot {
  const [first, ...others] = corners;
  let [x, y, area] = [0, 0, 0];
  for (const [at, b] of others.slice(1).entries()) {
    const a = others[at]!;
    const part = (a.x - first!.x) * (b.y - first!.y) - (b.x - first!.x) * (a.y - first!.y);
    x += (part * (first!.x + a.x + b.x)) / 3;
    y += (part * (first!.y + a.y + b.y)) / 3;
    area += part;
  }
  return { x: x / area, y: y / area };
}

function scaledAt(x: number, y: number, by: number): string {
  return `translate(${x} ${y}) scale(${by}) translate(${-x} ${-y})`;
}
