import { createHash, randomBytes } from 'node:crypto';
import { copyFile, link, mkdir, open, readFile, readdir, rename, rm, stat } from 'node:fs/promises';
import type { FileHandle } from 'node:fs/promises';
import { basename, dirname, join } from 'node:path';
import { Refusal } from '../refusals/refusal.ts';
import { once } from './once.ts';

/** photos: as they came; pictures: shrunk for the screen; swatches: flat sides. */
export const SHELVES = ['photos', 'pictures', 'swatches'] as const;
export type Shelf = (typeof SHELVES)[number];

/** A file that has come in whole but belongs to nothing yet. */
export interface Received {
  readonly path: string;
  readonly hash: string;
  readonly size: number;
}

/**
 * Files named by the SHA-256 of what is in them, written whole or not at all: into `incoming`, synced,
 * then renamed. No name from outside ever becomes a path.
 */
export interface Files {
  receive(pieces: AsyncIterable<Uint8Array>): Promise<Received>;
  /** Puts a received file on a shelf; it is durable when the promise is kept. */
  keep(shelf: Shelf, received: Received): Promise<string>;
  /** Puts bytes on a shelf and gives their hash. */
  keepBytes(shelf: Shelf, bytes: Uint8Array): Promise<string>;
  drop(received: Received): Promise<void>;
  /** Puts a received file where it waits to be read, and gives its name there; it is durable when the promise is kept. */
  hold(received: Received, name?: string): Promise<string>;
  /** A file that waits; refuses one that is missing. */
  held(name: string, hash: string): Promise<Received>;
  /** Puts a file that waits on a shelf as well; it goes on waiting until it is let go, so that a row always has it. */
  shelve(shelf: Shelf, held: Received): Promise<string>;
  letGo(name: string): Promise<void>;
  /** Removes files that wait for nothing, of a bucket only those from before `before`, and gives how many. */
  letGoOthers(names: ReadonlySet<string>, before: Date): Promise<number>;
  pathOf(shelf: Shelf, hash: string): string;
  read(shelf: Shelf, hash: string): Promise<Buffer>;
  /** The path of a file that is there; refuses one that is missing. */
  readable(shelf: Shelf, hash: string): Promise<string>;
  has(shelf: Shelf, hash: string): Promise<boolean>;
  hashesOn(shelf: Shelf): Promise<string[]>;
  remove(shelf: Shelf, hash: string): Promise<void>;
  clearIncoming(): Promise<number>;
}

export async function openFiles(folder: string): Promise<Files> {
  const incoming = join(folder, 'incoming');
  await mkdir(incoming, { recursive: true });
  const waiting = join(folder, 'waiting');
  await mkdir(waiting, { recursive: true });
  for (const shelf of SHELVES) await mkdir(join(folder, shelf), { recursive: true });

  const waitingPath = (name: string): string => {
    if (!isWaitingName(name))
      throw new RangeError('Expected 24 hexadecimal digits as the name of a file that waits');
    return join(waiting, name);
  };

  const pathOf = (shelf: Shelf, hash: string): string => {
    if (!/^[0-9a-f]{64}$/.test(hash))
      throw new RangeError('Expected 64 hexadecimal digits as the name of a file');
    return join(folder, shelf, hash.slice(0, 2), hash);
  };

  const files: Files = {
    pathOf,

    receive: async (pieces) => {
      const path = join(incoming, randomBytes(12).toString('hex'));
      const file = await open(path, 'wx');
      try {
        const { hash, size } = await pour(pieces, file);
        return { path, hash, size };
      } catch (fault) {
        await rm(path, { force: true });
        throw fault;
      }
    },

    keep: async (shelf, received) => {
      const path = pathOf(shelf, received.hash);
      await mkdir(dirname(path), { recursive: true });
      if (await files.has(shelf, received.hash)) await files.drop(received);
      else await rename(received.path, path);
      await syncFolder(dirname(path));
      await syncFolder(join(folder, shelf));
      return received.hash;
    },

    keepBytes: async (shelf, bytes) => {
      const hash = createHash('sha256').update(bytes).digest('hex');
      if (await files.has(shelf, hash)) return hash;
      return files.keep(shelf, await files.receive(once(bytes)));
    },

    drop: (received) => rm(received.path, { force: true }),

    hold: async ({ path }, name = basename(path)) => {
      await rename(path, waitingPath(name));
      await syncFolder(waiting);
      return name;
    },

    held: async (name, hash) => {
      const path = waitingPath(name);
      try {
        return { path, hash, size: (await stat(path)).size };
      } catch (fault) {
        if (isMissing(fault)) throw missing('photos');
        throw fault;
      }
    },

    shelve: async (shelf, held) => {
      const path = join(incoming, randomBytes(12).toString('hex'));
      // Where a file cannot have two names, it is copied.
      await link(held.path, path).catch(() => copySynced(held.path, path));
      return files.keep(shelf, { ...held, path });
    },

    letGo: (name) => rm(waitingPath(name), { force: true }),

    letGoOthers: async (names) => {
      const left = (await readdir(waiting)).filter((name) => !names.has(name));
      for (const name of left) await rm(join(waiting, name), { force: true, recursive: true });
      return left.length;
    },

    read: async (shelf, hash) => {
      try {
        return await readFile(pathOf(shelf, hash));
      } catch (fault) {
        if (isMissing(fault)) throw missing(shelf);
        throw fault;
      }
    },

    readable: async (shelf, hash) => {
      if (!(await files.has(shelf, hash))) throw missing(shelf);
      return pathOf(shelf, hash);
    },

    has: async (shelf, hash) => {
      try {
        return (await stat(pathOf(shelf, hash))).isFile();
      } catch (fault) {
        if (isMissing(fault)) return false;
        throw fault;
      }
    },

    hashesOn: async (shelf) => {
      const entries = await readdir(join(folder, shelf), { recursive: true, withFileTypes: true });
      return entries.filter((entry) => entry.isFile()).map((entry) => entry.name);
    },

    remove: (shelf, hash) => rm(pathOf(shelf, hash), { force: true }),

    clearIncoming: async () => {
      const left = await readdir(incoming);
      for (const name of left) await rm(join(incoming, name), { force: true, recursive: true });
      return left.length;
    },
  };
  return files;
}

async function pour(
  pieces: AsyncIterable<Uint8Array>,
  file: FileHandle,
): Promise<{ hash: string; size: number }> {
  const hash = createHash('sha256');
  let size = 0;
  try {
    for await (const piece of pieces) {
      hash.update(piece);
      size += piece.length;
      await file.writeFile(piece);
    }
    await file.sync();
  } finally {
    await file.close();
  }
  return { hash: hash.digest('hex'), size };
}

async function copySynced(from: string, to: string): Promise<void> {
  await copyFile(from, to);
  const file = await open(to, 'r+');
  try {
    await file.sync();
  } finally {
    await file.close();
  }
}

/** Makes a rename durable. Windows has no such call for folders and needs none. */
async function syncFolder(folder: string): Promise<void> {
  if (process.platform === 'win32') return;
  const handle = await open(folder, 'r');
  try {
    await handle.sync();
  } finally {
    await handle.close();
  }
}

export function isWaitingName(name: string): boolean {
  return /^[0-9a-f]{24}$/.test(name);
}

function isMissing(fault: unknown): boolean {
  return fault instanceof Error && 'code' in fault && fault.code === 'ENOENT';
}

export function missing(shelf: Shelf): Refusal {
  return new Refusal({
    kind: 'not-found',
    field: shelf,
    received: null,
    message: `Expected a file in the folder ${shelf} but it is no longer there`,
    mend:
      shelf === 'photos'
        ? 'Upload the photo again, or bring the data folder back from a backup.'
        : 'Delete the photo it came from and upload it again.',
  });
}
