import type { VNode } from 'preact';
import type { Photo } from '../../server/contract/pads.ts';
import type { Corners } from '../../server/contract/values.ts';
import type { Faced } from '../pad/sides.ts';

interface Props {
  readonly photo: Photo;
  readonly sides: readonly Faced[];
  /** Corners that stand in for those of a side, or of the white card, while they are being moved. */
  readonly moved?: { readonly of: string; readonly corners: Corners } | null;
}

/** A photo with the outlines of the sheets that were found on it, numbered; the white card and scraps with broken lines. */
export function OutlinedPhoto({ photo, sides, moved }: Props): VNode {
  const { width, height } = photo;
  const white = moved?.of === 'white' ? moved.corners : photo.white.corners;
  const unit = Math.max(width, height) / 100;
  return (
    <span class="outlined">
      <img src={photo.picture} alt="" width={width} height={height} />
      <svg viewBox={`0 0 ${width} ${height}`} aria-hidden="true">
        {white && <polygon class="outline white" points={points(white)} />}
        {photo.chips.scraps.map(({ corners }) => (
          <polygon key={points(corners)} class="outline white" points={points(corners)} />
        ))}
        {sides.map(({ side, sheet }) => {
          const corners = moved?.of === side.id ? moved.corners : side.corners;
          const [x, y] = middle(corners);
          return (
            <g key={side.id}>
              <polygon class="outline under" points={points(corners)} />
              <polygon class="outline" points={points(corners)} />
              <circle class="outline-badge" cx={x} cy={y} r={unit * 4} />
              <text class="outline-label" x={x} y={y} font-size={unit * 4.2} dy="0.36em">
                {sheet.label.replace(/^\D+/, '') || sheet.label.slice(0, 2)}
              </text>
            </g>
          );
        })}
      </svg>
    </span>
  );
}

function points(corners: Corners): string {
  return corners.map((corner) => corner.join(',')).join(' ');
}

function middle(corners: Corners): [number, number] {
  const sum = corners.reduce(([x, y], [cx, cy]) => [x + cx / 4, y + cy / 4], [0, 0]);
  return [sum[0], sum[1]];
}
