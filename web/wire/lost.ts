import { Refused } from './ask.ts';

/** Waits between tries, in milliseconds: a service that starts again, or a network that hiccups, is back by then. */
export const WAITS = [500, 1000, 2000, 4000, 8000] as const;

/** Lost so often in a row it is told, while it is asked on; what comes back sooner is only waited for. */
export const TOLD_AFTER = 3;

/** What says nothing of the question itself: no answer at all, asked too slowly or too often, a service that is busy or starts. */
const PASSING = [0, 408, 429, 502, 503, 504];

/** Whether the same question may well be answered when it is asked again. */
export function isPassing(fault: unknown): boolean {
  return fault instanceof Refused && PASSING.includes(fault.problem.status);
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
 * Throws      what the last try ended in.
 */
export async function untilAnswered<T>(
  act: (again: boolean) => Promise<T>,
  signal: AbortSignal | null = null,
): Promise<T> {
  for (let tries = 1; ; tries += 1) {
    try {
      return await act(tries > 1);
    } catch (fault) {
      const wait = waitAfter(tries, fault);
      if (!isPassing(fault) || tries === MOST_TRIES || wait > PATIENCE || signal?.aborted)
        throw fault;
      await new Promise((resolve) => setTimeout(resolve, wait));
      if (signal?.aborted) throw fault;
    }
  }
}
