import type { VNode } from 'preact';
import type { Picture, Shown, Spot } from './step.ts';

interface Props {
  readonly picture: Picture;
  readonly shown: Shown | null;
  readonly said: string;
  /** The numbers of all cuts, drawn once more over the lines that would hide them. */
  readonly badges: readonly Badge[];
}

export interface Badge {
  readonly number: number;
  readonly at: Spot;
}

/** The drawing of a sheet or card, with what is at hand marked on it and the rest veiled. */
export function ShownOn({ picture, shown, said, badges }: Props): VNode {
  const { src, alt, width, height } = picture;
  return (
    <div class="shown-on" style={{ aspectRatio: `${width} / ${height}` }}>
      <img src={src} alt={alt} />
      {shown && shown.kind !== 'base' && (
        <svg viewBox={`0 0 ${width} ${height}`} aria-hidden="true">
          {shown.kind === 'cut' && (
            <CutShown {...shown} picture={picture} said={said} badges={badges} />
          )}
          {shown.kind === 'finish' && <FinishShown {...shown} picture={picture} badges={badges} />}
          {shown.kind === 'layer' && <Veil picture={picture} around={shown.outline} edge />}
        </svg>
      )}
    </div>
  );
}

type Cut = Extract<Shown, { kind: 'cut' }>;

/** The part under the trimmer, where the blade runs, and the length from the edge that lies at the stop. */
function CutShown({
  part,
  from,
  to,
  measure,
  picture,
  said,
  badges,
}: Cut & { picture: Picture; said: string; badges: readonly Badge[] }): VNode {
  const down = from.x === to.x;
  const side = down
    ? { x: part.x, y: part.y + part.height * measure }
    : { x: part.x + part.width * measure, y: part.y };
  const end = down ? { x: from.x, y: side.y } : { x: side.x, y: from.y };
  return (
    <>
      <Veil picture={picture} around={cornersOf(part)} edge />
      <path class="blade-under" d={lineOf(from, to)} />
      <path class="blade" d={lineOf(from, to)} />
      <path class="measure-under" d={lineOf(side, end)} />
      <path class="measure" d={`${lineOf(side, end)}${tips(side, end, down)}`} />
      <Numbers badges={badges.filter(({ at }) => isOn(at, part))} />
      <Label picture={picture} from={side} to={end} said={said} />
    </>
  );
}

type Finish = Extract<Shown, { kind: 'finish' }>;

/** Where a piece is finished, as it still lies on the sheet. */
function FinishShown({
  part,
  tracks,
  badge,
  picture,
  badges,
}: Finish & { picture: Picture; badges: readonly Badge[] }): VNode {
  const cut = tracks.map((track) => `M${track.map(({ x, y }) => `${x} ${y}`).join('L')}`).join('');
  return (
    <>
      <Veil picture={picture} around={cornersOf(part)} edge />
      <path class="finish-under" d={cut} />
      <path class="finish" d={cut} />
      <Numbers badges={badges.filter(({ at }) => at === badge)} />
    </>
  );
}

function Numbers({ badges }: { badges: readonly Badge[] }): VNode {
  return (
    <>
      {badges.map(({ number, at }) => (
        <g key={number} class="number">
          <circle cx={at.x} cy={at.y} r={BADGE} />
          <text x={at.x} y={at.y + 1.35} text-anchor="middle">
            {number}
          </text>
        </g>
      ))}
    </>
  );
}

/** Radius of a number, as in the drawing below. */
const BADGE = 2.9;

function isOn({ x, y }: Spot, part: Cut['part']): boolean {
  return (
    x >= part.x - BADGE &&
    y >= part.y - BADGE &&
    x <= part.x + part.width + BADGE &&
    y <= part.y + part.height + BADGE
  );
}

/** Everything but what is at hand, paled. */
function Veil({
  picture: { width, height },
  around,
  edge,
}: {
  picture: Picture;
  around: readonly Spot[];
  edge: boolean;
}): VNode {
  const shape = `M${around.map(({ x, y }) => `${x} ${y}`).join('L')}Z`;
  return (
    <>
      <path class="veil" d={`M0 0H${width}V${height}H0Z${shape}`} />
      {edge && <path class="at-hand-under" d={shape} />}
      {edge && <path class="at-hand" d={shape} />}
    </>
  );
}

/** The length on its measure; where that is too short, beyond the blade. */
function Label({
  picture: { width, height },
  from,
  to,
  said,
}: {
  picture: Picture;
  from: Spot;
  to: Spot;
  said: string;
}): VNode {
  const wide = 2.9 * said.length + 4;
  const [dx, dy] = [to.x - from.x, to.y - from.y];
  const along = dx > 0 ? wide : 9;
  const roomy = dx + dy > along + 6;
  const beyond = along / 2 + 3;
  const at = {
    x: roomy || dx === 0 ? (from.x + to.x) / 2 : to.x + beyond,
    y: roomy || dy === 0 ? (from.y + to.y) / 2 : to.y + beyond,
  };
  const x = Math.min(width - wide / 2 - 0.5, Math.max(wide / 2 + 0.5, at.x));
  const y = Math.min(height - 5, Math.max(5, at.y));
  return (
    <>
      <rect class="said" x={x - wide / 2} y={y - 4.5} width={wide} height={9} rx={1} />
      <text x={x} y={y + 2} text-anchor="middle">
        {said}
      </text>
    </>
  );
}

function cornersOf({ x, y, width, height }: Cut['part']): Spot[] {
  return [
    { x, y },
    { x: x + width, y },
    { x: x + width, y: y + height },
    { x, y: y + height },
  ];
}

function lineOf(from: Spot, to: Spot): string {
  return `M${from.x} ${from.y}L${to.x} ${to.y}`;
}

/** Short strokes across both ends of a measure. */
function tips(from: Spot, to: Spot, down: boolean): string {
  return [from, to]
    .map(({ x, y }) => (down ? `M${x} ${y - 2.5}v5` : `M${x - 2.5} ${y}h5`))
    .join('');
}
