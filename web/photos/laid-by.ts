import type { Berth } from './tablefuls.ts';

/** A photo kept on this device until the service has it. */
export interface LaidBy {
  readonly key: string;
  readonly pad: string;
  readonly berth: Berth;
  readonly name: string;
  readonly file: Blob;
}

const STORE = 'photos';

/** Keeps a photo. A browser that refuses the space only loses the safety net, so its refusal is let go. */
export async function layBy({ key, pad, berth, name, file }: LaidBy): Promise<void> {
  await inStore('readwrite', (store) => store.put({ key, pad, berth, name, file })).catch(
    () => null,
  );
}

export async function takeAway(key: string): Promise<void> {
  await inStore('readwrite', (store) => store.delete(key)).catch(() => null);
}

export async function laidBy(): Promise<LaidBy[]> {
  const all = inStore<LaidBy[]>('readonly', (store) => store.getAll() as IDBRequest<LaidBy[]>);
  return all.catch(() => []);
}

async function inStore<T>(
  mode: IDBTransactionMode,
  act: (store: IDBObjectStore) => IDBRequest<T>,
): Promise<T> {
  const database = await open();
  try {
    return await settled(act(database.transaction(STORE, mode).objectStore(STORE)));
  } finally {
    database.close();
  }
}

function open(): Promise<IDBDatabase> {
  const request = indexedDB.open('plyhue', 1);
  request.onupgradeneeded = () => request.result.createObjectStore(STORE, { keyPath: 'key' });
  return settled(request);
}

function settled<T>(request: IDBRequest<T>): Promise<T> {
  return new Promise((resolve, reject) => {
    request.onsuccess = () => resolve(request.result);
    request.onerror = () => reject(request.error ?? new Error(request.readyState));
  });
}
