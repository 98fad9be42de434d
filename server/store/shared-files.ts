import { open, rm } from 'node:fs/promises';
import { basename, join } from 'node:path';
import {
  DeleteObjectCommand,
  GetObjectCommand,
  HeadObjectCommand,
  ListObjectsV2Command,
  PutObjectCommand,
  S3Client,
} from '@aws-sdk/client-s3';
import { once } from './once.ts';
import { SHELVES, isWaitingName, missing, openFiles } from './files.ts';
import type { Files, Received, Shelf } from './files.ts';
import type { Bucket } from './bucket.ts';

/**
 * Files in a bucket that several processes share, with copies beside this process of those it asked for.
 *
 * A file is received here first, whole and hashed, then put into the bucket, and only then counts as kept.
 * Names are hashes of the content, so two processes that keep the same file write the same bytes. The keys
 * come from the environment, by the names that S3 clients share (AWS_ACCESS_KEY_ID, AWS_SECRET_ACCESS_KEY).
 */
export async function openSharedFiles(folder: string, place: Bucket): Promise<Files> {
  const copies = join(folder, 'copies');
  await rm(copies, { recursive: true, force: true });
  const local = await openFiles(copies);
  const { prefix, endpoint, region, bucket: Bucket } = place;
  const client = new S3Client({
    region,
    ...(endpoint === null ? {} : { endpoint, forcePathStyle: true }),
    requestChecksumCalculation: 'WHEN_REQUIRED',
  });
  const folderOf = (shelf: Shelf): string => (prefix === '' ? `${shelf}/` : `${prefix}/${shelf}/`);
  const keyOf = (shelf: Shelf, hash: string): { Bucket: string; Key: string } => ({
    Bucket,
    Key: `${folderOf(shelf)}${hash}`,
  });

  const waitingFolder = prefix === '' ? 'waiting/' : `${prefix}/waiting/`;
  const waitingKey = (name: string): { Bucket: string; Key: string } => ({
    Bucket,
    Key: `${waitingFolder}${name}`,
  });

  /** What lies in a folder of the bucket, and since when. */
  async function* list(Prefix: string): AsyncGenerator<{ readonly name: string; since: Date }> {
    let ContinuationToken: string | undefined;
    do {
      const page = await client.send(
        new ListObjectsV2Command({
          Bucket,
          Prefix,
          ...(ContinuationToken === undefined ? {} : { ContinuationToken }),
        }),
      );
      for (const { Key, LastModified } of page.Contents ?? [])
        yield { name: Key!.slice(Prefix.length), since: LastModified ?? new Date() };
      ContinuationToken = page.NextContinuationToken;
    } while (ContinuationToken !== undefined);
  }

  const isThere = async (shelf: Shelf, hash: string): Promise<boolean> => {
    try {
      await client.send(new HeadObjectCommand(keyOf(shelf, hash)));
      return true;
    } catch (fault) {
      if (isMissing(fault)) return false;
      throw fault;
    }
  };

  /** Opens the file itself: a stream that finds no file says so to nobody before the client listens to it. */
  const send = async (
    key: { Bucket: string; Key: string },
    { size, path }: Received,
  ): Promise<void> => {
    const file = await open(path);
    try {
      const Body = file.createReadStream({ autoClose: false });
      await client.send(new PutObjectCommand({ ...key, Body, ContentLength: size }));
    } finally {
      await file.close();
    }
  };

  const put = async (shelf: Shelf, received: Received): Promise<void> => {
    if (await isThere(shelf, received.hash)) return;
    await send(keyOf(shelf, received.hash), received);
  };

  /** Brings a file here, unless it is here already. */
  const bring = async (shelf: Shelf, hash: string): Promise<void> => {
    if (await local.has(shelf, hash)) return;
    try {
      const { Body } = await client.send(new GetObjectCommand(keyOf(shelf, hash)));
      const received = await local.receive(Body as AsyncIterable<Uint8Array>);
      if (received.hash === hash) await local.keep(shelf, received);
      else {
        await local.drop(received);
        throw missing(shelf);
      }
    } catch (fault) {
      throw isMissing(fault) ? missing(shelf) : fault;
    }
  };

  const files: Files = {
    ...local,
    keep: async (shelf, received) => {
      await put(shelf, received);
      return local.keep(shelf, received);
    },
    keepBytes: async (shelf, bytes) => files.keep(shelf, await local.receive(once(bytes))),
    read: async (shelf, hash) => {
      await bring(shelf, hash);
      return local.read(shelf, hash);
    },
    readable: async (shelf, hash) => {
      await bring(shelf, hash);
      return local.readable(shelf, hash);
    },
    has: async (shelf, hash) => (await local.has(shelf, hash)) || (await isThere(shelf, hash)),
    hashesOn: async (shelf) => {
      const hashes: string[] = [];
      for await (const { name } of list(folderOf(shelf))) hashes.push(name);
      return hashes;
    },
    hold: async (received) => {
      await send(waitingKey(basename(received.path)), received);
      return local.hold(received);
    },
    held: async (name, hash) => {
      const here = await local.held(name, hash).catch(() => null);
      if (here !== null) return here;
      try {
        const { Body } = await client.send(new GetObjectCommand(waitingKey(name)));
        const received = await local.receive(Body as AsyncIterable<Uint8Array>);
        return await local.held(await local.hold(received, name), hash);
      } catch (fault) {
        throw isMissing(fault) ? missing('photos') : fault;
      }
    },
    shelve: async (shelf, held) => {
      await put(shelf, held);
      return local.shelve(shelf, held);
    },
    letGo: async (name) => {
      await local.letGo(name);
      await client.send(new DeleteObjectCommand(waitingKey(name)));
    },
    letGoOthers: async (names, before) => {
      let gone = 0;
      for await (const { name, since } of list(waitingFolder)) {
        if (!isWaitingName(name) || names.has(name) || since >= before) continue;
        await files.letGo(name);
        gone += 1;
      }
      return gone;
    },
    remove: async (shelf, hash) => {
      await client.send(new DeleteObjectCommand(keyOf(shelf, hash)));
      await local.remove(shelf, hash);
    },
  };
  return files;
}

/** True when the bucket answers; its shelves need not hold anything yet. */
export async function bucketAnswers(files: Files): Promise<boolean> {
  try {
    await files.hashesOn(SHELVES[0]);
    return true;
  } catch {
    return false;
  }
}

function isMissing(fault: unknown): boolean {
  return (
    fault instanceof Error &&
    (fault.name === 'NoSuchKey' || fault.name === 'NotFound' || fault.name === '404')
  );
}
