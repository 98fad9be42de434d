/** An upright box; its lengths in any one unit. */
export interface Room {
  readonly x: number;
  readonly y: number;
  readonly width: number;
  readonly height: number;
}

/** The most of its room's longer and shorter side that the word for a greeting takes. */
export const [ALONG, ACROSS] = [0.72, 0.66] as const;
/** The longest that the word is written, in mm. */
export const LONGEST = 62;

/**
 * The longest stretch of a greeting, along its longer side, that nothing stamped or glued on it takes: the word for
 * it stands there. The whole greeting where all of its length is taken, as it is drawn under what lies on it.
 *
 * It imports nothing, as the page uses it too.
 */
export function greetingRoom(greeting: Room, taken: readonly Room[]): Room {
  const upright = greeting.height > greeting.width;
  const [from, to] = spanOf(greeting, upright);
  const spans = taken
    .filter((one) => meets(spanOf(one, !upright), spanOf(greeting, !upright)))
    .map((one) => spanOf(one, upright))
    .sort(([a], [b]) => a - b);
  let [best, reached] = [[from, from] as const, from];
  for (const [start, end] of [...spans, [to, to] as const]) {
    const until = Math.min(start, to);
    if (until - reached > best[1] - best[0]) best = [reached, until];
    reached = Math.max(reached, end);
  }
  const [start, length] = [best[0], best[1] - best[0]];
  if (length <= 0) return greeting;
  return upright
    ? { ...greeting, y: start, height: length }
    : { ...greeting, x: start, width: length };
}

type Span = readonly [from: number, to: number];

function spanOf({ x, y, width, height }: Room, down: boolean): Span {
  return down ? [y, y + height] : [x, x + width];
}

function meets([from, to]: Span, [start, end]: Span): boolean {
  return from < end && start < to;
}
