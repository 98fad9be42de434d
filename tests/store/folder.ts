import { mkdtemp, rm } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { onTestFinished } from 'vitest';
import { openStore } from '../../server/store/open-store.ts';
import type { Store } from '../../server/store/open-store.ts';

/** An empty folder that goes when the test has ended. */
export async function newFolder(): Promise<string> {
  const folder = await mkdtemp(join(tmpdir(), 'plyhue-'));
  onTestFinished(() => rm(folder, { recursive: true, force: true }));
  return folder;
}

/** A store on a folder, closed when the test has ended; closing it twice does no harm. */
export async function openForTest(folder: string): Promise<Store> {
  const store = await openStore(folder);
  let open = true;
  const close = async (): Promise<void> => {
    if (open) await store.close();
    open = false;
  };
  onTestFinished(close);
  return { ...store, close };
}
