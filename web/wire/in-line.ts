import { isPassing } from './lost.ts';

/** A change that is under way, or waits until those before it at the same address have ended. */
interface Standing {
  /** What of the thing it sets; null for all of it. */
  readonly fields: ReadonlySet<string> | null;
  /** Ends its tries: what it sets has been wished otherwise meanwhile. */
  readonly overtaken: AbortController;
  newer: Promise<unknown> | null;
  /** When its last try has ended, however. */
  readonly end: Promise<void>;
}

/** By address, the oldest first. */
const lines = new Map<string, Standing[]>();

/**
 * Has the changes of one address made one after the other, so that no late try puts an older value over a newer one.
 * One that was lost is not tried again once a newer one sets all that it sets: it ends as the newer one ends.
 *
 * Takes       the fields that are set, null for the whole thing; and what makes the change, told by the signal
 *             when it is not to be tried again.
 * Throws      what `make` throws; of one that was overtaken, what the newer one throws.
 */
export function inLine<T>(
  address: string,
  fields: readonly string[] | null,
  make: (overtaken: AbortSignal) => Promise<T>,
): Promise<T> {
  const line = lines.get(address) ?? [];
  const overtaken = new AbortController();
  const own = (line.at(-1)?.end ?? Promise.resolve()).then(() => make(overtaken.signal));
  const standing: Standing = {
    fields: fields === null ? null : new Set(fields),
    overtaken,
    newer: null,
    end: own.then(leave, leave),
  };
  const answer = own.catch((fault: unknown) => {
    if (standing.newer === null || !isPassing(fault)) throw fault;
    return standing.newer as Promise<T>;
  });
  for (const older of line) {
    if (!covers(standing, older)) continue;
    older.newer = answer;
    older.overtaken.abort();
  }
  line.push(standing);
  lines.set(address, line);
  return answer;

  function leave(): void {
    line.splice(line.indexOf(standing), 1);
    if (line.length === 0) lines.delete(address);
  }
}

function covers(newer: Standing, older: Standing): boolean {
  if (newer.fields === null || older.fields === null) return newer.fields === null;
  return [...older.fields].every((field) => newer.fields!.has(field));
}
