import type { Spot } from './drawing.ts';

/** A line of straight parts, one after the other. */
export type Track = readonly Spot[];

/** The place on a track at a part of its length, in [0, 1]. */
export function spotOn(track: Track, part: number): Spot {
  const edges = edgesOf(track);
  let left = part * edges.reduce((sum, { length }) => sum + length, 0);
  const edge = edges.find(({ length }) => {
    if (left <= length) return true;
    left -= length;
    return false;
  });
  return edge === undefined ? track.at(-1)! : onEdge(edge, left);
}

/** The stretches that are drawn of a dashed track; dashes go on around its corners. In the track's own units. */
export function dashesOf(track: Track, on: number, off: number): { from: Spot; to: Spot }[] {
  let start = 0;
  return edgesOf(track).flatMap((edge) => {
    const end = start + edge.length;
    const drawn: { from: Spot; to: Spot }[] = [];
    for (let dash = Math.floor(start / (on + off)); dash * (on + off) < end; dash++) {
      const [from, to] = [dash * (on + off), dash * (on + off) + on];
      if (to <= start) continue;
      const [first, last] = [Math.max(from, start) - start, Math.min(to, end) - start];
      drawn.push({ from: onEdge(edge, first), to: onEdge(edge, last) });
    }
    start = end;
    return drawn;
  });
}

interface Edge {
  readonly from: Spot;
  readonly to: Spot;
  readonly length: number;
}

function edgesOf(track: Track): Edge[] {
  return track.slice(1).map((to, at) => {
    const from = track[at]!;
    return { from, to, length: Math.hypot(to.x - from.x, to.y - from.y) };
  });
}

function onEdge({ from, to, length }: Edge, away: number): Spot {
  const share = length === 0 ? 0 : away / length;
  return { x: from.x + share * (to.x - from.x), y: from.y + share * (to.y - from.y) };
}
