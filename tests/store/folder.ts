import { mkdtemp, rm } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { onTestFinished } from 'vitest';
import { openStore } from '../../server/store/open-store.ts';
import type { Store } from '../../server/store/open-store.ts';
import { sharedPlace } from '../shared-store/place.ts';

/** An empty folder that goes when the test has ended. */
export async function newFolder(): Promise<string> {
  const folder = await mkdtemp(join(tmpdir(), 'plyhue-'));
  onTestFinished(() => rm(folder, { recursive: true, force: true }));
  return folder;
}

/** A store on a folder, or on the shared place of its name; closed when the test has ended, twice does no harm. */
export async function openForTest(folder: string): Promise<Store> {
  const store = await openStore(folder, await sharedPlace(folder));
  let open = true;
  const close = async (): Promise<void> => {
    if (open) await store.close();
    open = false;
  };
  onTestFinished(close);
  return { ...store, close };
}
