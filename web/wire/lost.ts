import { Refused } from './ask.ts';

/** Waits between tries, in milliseconds: a service that starts again, or a network that hiccups, is back by then. */
export const WAITS = [500, 1000, 2000, 4000, 8000] as const;

/** Lost so often in a row it is told, while it is asked on; what comes back sooner is only waited for. */
export const TOLD_AFTER = 3;

/** What says nothing of the question itself: no answer at all, asked too slowly or too often, a service that is busy or starts. */
const PASSING = [0, 408, 429, 502, 503, 504];

/** What stays so however often it is asked; who may not ask now (401, 403) may when the key is brought again. */
const FOR_GOOD = [400, 404, 410, 422];

/** Whether the same question may well be answered when it is asked again. */
export function isPassing(fault: unknown): boolean {
  return fault instanceof Refused && PASSING.includes(fault.problem.status);
}

/** Whether a question is refused for good: it is wrong in itself, or what it speaks of is not there. */
export function isForGood(fault: unknown): boolean {
  return fault instanceof Refused && FOR_GOOD.includes(fault.problem.status);
}

/** How long to wait after so many tries, in milliseconds: as the service says, and longer each time. */
export function waitAfter(tries: number, fault: unknown): number {
  const own = WAITS[Math.min(tries, WAITS.length) - 1]!;
  return Math.max(own, fault instanceof Refused ? fault.after : 0);
}

/** A service that asks for more patience than this, in milliseconds, is not waited for by who looks on. */
const PATIENCE = 10_000;
const MOST_TRIES = 4;

/**
 * Sends again what was lost on its way, a few times.
 *
 * Takes       what may be done twice and is then done once; it is told whether an earlier try may have arrived.
 *             Once one of `stops` says so, nothing is sent again.
 * Throws      what the last try ended in.
 */
export async function untilAnswered<T>(
  act: (again: boolean) => Promise<T>,
  ...stops: readonly (AbortSignal | null)[]
): Promise<T> {
  const isOver = (): boolean => stops.some((stop) => stop?.aborted);
  for (let tries = 1; ; tries += 1) {
    try {
      return await act(tries > 1);
    } catch (fault) {
      const wait = waitAfter(tries, fault);
      if (!isPassing(fault) || tries === MOST_TRIES || wait > PATIENCE || isOver()) throw fault;
      await waited(wait, stops);
      if (isOver()) throw fault;
    }
  }
}

/** Waits so many milliseconds, or until it is stopped. */
function waited(wait: number, stops: readonly (AbortSignal | null)[]): Promise<void> {
  return new Promise((resolve) => {
    const end = (): void => {
      clearTimeout(timer);
      for (const stop of stops) stop?.removeEventListener('abort', end);
      resolve();
    };
    const timer = setTimeout(end, wait);
    for (const stop of stops) stop?.addEventListener('abort', end);
  });
}
