import type { Layer, NewLayout } from '../../server/contract/layouts.ts';
import type { Room } from '../../server/layouts/greeting-room.ts';
import { besideShape } from './beside-shape.ts';
import { elementsOf } from './elements.ts';
import { greetingWord, meet } from './greeting-word.ts';
import { boxOf } from './place-layer.ts';

/** A layer with the part of it on which something new would lie free, in mm. */
export interface FreePlace {
  readonly layer: Layer;
  readonly room: Room;
}

/** Air that is left around what lies on a narrow layer, and the size below which it would be lost (mm). */
export const [AIR, LEAST] = [25.4 / 8, 25.4 * 0.75];

/**
 * Where something new comes: on the layer that is chosen if that has room, else on the one that has most, or on the
 * card itself. Where there is no room at all, on the chosen one, at the beginning of the largest part that only the
 * words of a greeting take; and in the middle of it where all of it is taken.
 */
export function freePlace(layout: NewLayout, chosen: number): FreePlace {
  const layer = layout.layers[chosen]!;
  const placeOn = (one: Layer): { layer: Layer; room: Room | null } => ({
    layer: one,
    room: freeRoom(layout, one),
  });
  const wished = placeOn(layer);
  if (hasRoom(wished)) return wished;
  const [most] = layout.layers
    .slice(1)
    .filter((one) => one !== layer)
    .map(placeOn)
    .filter(hasRoom)
    .sort((a, b) => useOf(b.room) - useOf(a.room));
  if (most !== undefined) return most;
  const base = placeOn(layout.layers[0]!);
  if (hasRoom(base)) return base;
  const room = freeRoom(layout, layer, true);
  return { layer, room: room === null ? boxOf(layer) : beginningOf(room) };
}

/** The first part of a room along its longer side: what is left of it has room for words. */
function beginningOf(room: Room): Room {
  return room.height > room.width
    ? { ...room, height: room.height * BEGINNING }
    : { ...room, width: room.width * BEGINNING };
}

const BEGINNING = 0.4;

/** A strip that she chose for it may be narrow; a greeting must have room beside its words. */
function hasRoom(place: { layer: Layer; room: Room | null }): place is FreePlace {
  if (place.room === null) return false;
  const least = Math.min(place.room.width, place.room.height);
  return least >= (place.layer.role === 'greeting' ? LEAST : 3 * AIR);
}

/** The largest part of a layer that nothing covers; null where there is none. */
function freeRoom(layout: NewLayout, layer: Layer, overWords = false): Room | null {
  const at = layout.layers.indexOf(layer);
  const elements = elementsOf(layout);
  const words = layer.role === 'greeting' && !overWords ? [greetingWord(layer, elements).box] : [];
  const above = [...layout.layers.slice(at + 1), ...elements].map(boxOf);
  return largestFree(boxOf(layer), [...above, ...words, ...besideShape(layer)]);
}

/** The upright rectangle of most use within a room that meets none of the boxes; null where there is none. */
export function largestFree(room: Room, taken: readonly Room[]): Room | null {
  const inside = taken.filter((one) => meet(one, room)).sort((a, b) => a.y - b.y);
  const right = room.x + room.width;
  const edges = [room.x, right, ...inside.flatMap(({ x, width }) => [x, x + width])]
    .filter((x) => x >= room.x && x <= right)
    .sort((a, b) => a - b);
  let best: Room | null = null;
  for (const [n, x] of edges.entries())
    for (const end of edges.slice(n + 1)) {
      const span = { ...room, x, width: end - x };
      for (const { y, height } of gapsOf(
        span,
        inside.filter((one) => meet(one, span)),
      )) {
        const one = { ...span, y, height };
        if (best === null || useOf(one) > useOf(best)) best = one;
      }
    }
  return best;
}

/** What a free part is worth: its area, of a long one no more than two squares. */
function useOf({ width, height }: Room): number {
  return Math.min(width, 2 * height) * Math.min(height, 2 * width);
}

/** The heights of a span that none of the boxes takes, which come from the top down. */
function gapsOf({ y, height }: Room, taken: readonly Room[]): Pick<Room, 'y' | 'height'>[] {
  const gaps: Pick<Room, 'y' | 'height'>[] = [];
  let reached = y;
  const end = { y: y + height, height: 0 };
  for (const one of [...taken, end]) {
    if (one.y > reached) gaps.push({ y: reached, height: one.y - reached });
    reached = Math.max(reached, one.y + one.height);
  }
  return gaps;
}
