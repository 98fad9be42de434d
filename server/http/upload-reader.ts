import { setTimeout as pause } from 'node:timers/promises';
import type { Edges } from './edges.ts';
import { readUpload } from './read-upload.ts';

/** Reads the photos that wait, beside those that someone waits for. */
export interface UploadReader {
  /** Finishes what is under way and gives back the rest. */
  stop(): Promise<void>;
}

export interface ReaderSettings {
  /** How many it reads at once. */
  readonly places: number;
  /** How often it looks for more when nothing waits, and says that it still lives, in milliseconds. */
  readonly pace: number;
  readonly alive: number;
}

const USUAL: ReaderSettings = { places: 2, pace: 1000, alive: 10_000 };

export function startUploadReader(edges: Edges, settings = USUAL): UploadReader {
  const { waiting } = edges.store;
  const stopped = new AbortController();
  const { signal } = stopped;
  const rest = (milliseconds: number): Promise<void> =>
    pause(milliseconds, undefined, { signal, ref: false }).catch(() => undefined);
  // A database that is away is asked again at the next turn.
  const reader = async (): Promise<void> => {
    while (!signal.aborted) {
      const more = await readNext(edges).catch(() => false);
      if (!more) await rest(settings.pace);
    }
  };
  const heart = async (): Promise<void> => {
    while (!signal.aborted) {
      await waiting.renew(edges.now()).catch(() => undefined);
      await rest(settings.alive);
    }
  };
  const readers = Array.from({ length: settings.places }, reader);
  const beating = heart();
  return {
    stop: async () => {
      stopped.abort();
      await Promise.all(readers);
      await beating;
      await waiting.handBack();
    },
  };
}

/** Takes the first photo that waits and reads it, on behalf of who sent it; false when none waits. */
export async function readNext(edges: Edges): Promise<boolean> {
  const { store } = edges;
  const upload = await store.waiting.claim(edges.now());
  if (upload === null) return false;
  const sender = { person: upload.owner, pad: null };
  const hers = { ...edges, store: { ...store, ...store.askedBy(() => sender) } };
  // What kept it from being read is noted with it.
  await readUpload(hers, upload).catch(() => undefined);
  return true;
}
