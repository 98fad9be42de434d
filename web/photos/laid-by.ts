import type { Berth } from './tablefuls.ts';

/** A photo kept on this device until the service has it, or, once it is unwanted, until the service has it no more. */
export interface LaidBy {
  readonly key: string;
  readonly pad: string;
  readonly berth: Berth;
  readonly name: string;
  readonly file: Blob;
  /** All of it may have been sent once, so that the service may have it although no answer told so. */
  readonly whole: boolean;
  /** She took it away, and the service may have it. */
  readonly unwanted: boolean;
}

const STORE = 'photos';

/** Keeps a photo, and tells whether it could. A browser that refuses the space only loses the safety net. */
export async function layBy(photo: LaidBy): Promise<boolean> {
  const { key, pad, berth, name, file, whole, unwanted } = photo;
  return inStore('readwrite', (store) =>
    store.put({ key, pad, berth, name, file, whole, unwanted }),
  ).then(
    () => true,
    () => false,
  );
}

export async function takeAway(key: string): Promise<void> {
  await inStore('readwrite', (store) => store.delete(key)).catch(() => null);
}

/** Notes that all of a photo may have been sent; one that is not kept any more stays away. */
export async function noteWhole(key: string): Promise<void> {
  await withKept(key, (store, kept) => store.put({ ...kept, whole: true })).catch(() => null);
}

/**
 * Keeps a photo under another name. The new copy comes and the old one goes in one step, so that neither a page
 * closed in between nor another page that wants it as well makes two of it.
 *
 * Gives       the name under which it is kept: the old one where the browser refuses the step, null where another
 *             page was first.
 */
export async function keepAs(old: string, key: string): Promise<string | null> {
  try {
    const kept = await withKept(old, (store, photo) => {
      store.put({ ...photo, key });
      store.delete(old);
    });
    return kept === undefined ? null : key;
  } catch {
    return old;
  }
}

export async function laidBy(): Promise<LaidBy[]> {
  const all = inStore('readonly', (store) => store.getAll() as IDBRequest<LaidBy[]>);
  return all.catch(() => []);
}

/** Reads a photo and, where it is kept, does something with it in the same transaction. */
function withKept(
  key: string,
  act: (store: IDBObjectStore, kept: LaidBy) => void,
): Promise<LaidBy | undefined> {
  return inStore('readwrite', (store) => {
    const kept = store.get(key) as IDBRequest<LaidBy | undefined>;
    kept.addEventListener('success', () => {
      if (kept.result !== undefined) act(store, kept.result);
    });
    return kept;
  });
}

/** Gives the result once all of the transaction is kept. */
async function inStore<T>(
  mode: IDBTransactionMode,
  act: (store: IDBObjectStore) => IDBRequest<T>,
): Promise<T> {
  const database = await open();
  try {
    const transaction = database.transaction(STORE, mode);
    const request = act(transaction.objectStore(STORE));
    await done(transaction);
    return request.result;
  } finally {
    database.close();
  }
}

function open(): Promise<IDBDatabase> {
  const request = indexedDB.open('plyhue', 1);
  request.onupgradeneeded = () => request.result.createObjectStore(STORE, { keyPath: 'key' });
  return new Promise((resolve, reject) => {
    request.onsuccess = () => resolve(request.result);
    request.onerror = () => reject(request.error ?? new Error(request.readyState));
  });
}

function done(transaction: IDBTransaction): Promise<void> {
  return new Promise((resolve, reject) => {
    transaction.oncomplete = () => resolve();
    // Whatever fails in it ends in this, also a lack of space that shows only at the end.
    transaction.onabort = () => reject(transaction.error ?? new Error('aborted'));
  });
}
