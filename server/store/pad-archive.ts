import { Readable } from 'node:stream';
import { extract, pack } from 'tar-stream';
import type { Headers } from 'tar-stream';
import { Refusal } from '../refusals/refusal.ts';
import { SHELVES } from './files.ts';
import type { Files, Received, Shelf } from './files.ts';
import { tallyOf } from './pad-limits.ts';

/**
 * One pad as one file: a tar archive (POSIX ustar) that holds `pad.json` first, then each of its plans as
 * `plans/1.json` and so on, and then each of its pictures as `shelf/hash`, so that what is inside can be checked
 * against its own name.
 */
export interface PadArchive {
  readonly contents: unknown;
  /** Its plans as JSON text, each a file that belongs to nothing yet. */
  readonly plans: readonly Received[];
  /** The pictures that came with it, by shelf; whole, checked, and belonging to nothing yet. */
  readonly files: readonly { readonly shelf: Shelf; readonly received: Received }[];
}

const CONTENTS = 'pad.json';
/** However many there are: those that are too many are refused as such, not taken for pictures. */
const PLAN = /^plans\/\d+\.json$/;

/** What a file of a pad is made of. */
export interface PadToPack {
  /** As JSON text. */
  readonly contents: string;
  /** Its plans as JSON text. */
  readonly plans: AsyncIterable<string>;
  readonly owned: readonly { readonly shelf: Shelf; readonly hash: string }[];
}

/** Streams a pad into an archive; plans and pictures are read one after the other. */
export function packArchive({ contents, plans, owned }: PadToPack, files: Files): Readable {
  const archive = pack();
  const fill = async (): Promise<void> => {
    await put(archive, CONTENTS, Buffer.from(contents));
    let number = 0;
    for await (const plan of plans) await put(archive, `plans/${++number}.json`, Buffer.from(plan));
    for (const { shelf, hash } of owned)
      await put(archive, `${shelf}/${hash}`, await files.read(shelf, hash));
    archive.finalize();
  };
  fill().catch((fault: unknown) =>
    archive.destroy(fault instanceof Error ? fault : new Error(String(fault))),
  );
  return Readable.from(archive as AsyncIterable<Uint8Array>, { objectMode: false });
}

/** The same pad is the same file, whenever it is saved. */
const NO_TIME = new Date(0);

/** Kept when the archive has taken the bytes, so that a slow reader is never ahead by more than one file. */
function put(archive: ReturnType<typeof pack>, name: string, bytes: Buffer): Promise<void> {
  return new Promise((kept, failed) => {
    const entry = archive.entry({ name, size: bytes.length, mtime: NO_TIME }, (fault) =>
      fault ? failed(fault) : kept(),
    );
    entry.end(bytes);
  });
}

/**
 * Reads an archive: every picture is received whole and held against the hash that names it.
 * When anything is wrong, nothing of it stays behind and a Refusal says what.
 */
export async function unpackArchive(
  source: AsyncIterable<Uint8Array>,
  files: Files,
): Promise<PadArchive> {
  const taken: { shelf: Shelf; received: Received }[] = [];
  const plans: Received[] = [];
  const archive = extract();
  const pour = Readable.from(source, { objectMode: false });
  pour.on('error', (fault) => archive.destroy(fault));
  pour.pipe(archive);
  let contents: unknown;
  const tally = tallyOf('file');
  try {
    for await (const entry of archive) {
      const { name, size = 0 } = entry.header;
      if (name === CONTENTS) {
        tally.contents(size);
        contents = await readContents(entry);
      } else if (PLAN.test(name)) {
        tally.plan(size);
        plans.push(await receivePlan(entry, entry.header, files));
      } else {
        tally.picture(size);
        taken.push(await receive(entry, entry.header, files));
      }
    }
    if (contents === undefined) throw notAPad('no pad.json in it');
    return { contents, plans, files: taken };
  } catch (fault) {
    for (const received of [...plans, ...taken.map((one) => one.received)])
      await files.drop(received);
    throw fault instanceof Refusal || isOfSystem(fault) ? fault : notAPad(words(fault));
  } finally {
    pour.destroy();
  }
}

async function readContents(entry: AsyncIterable<Uint8Array>): Promise<unknown> {
  const pieces: Uint8Array[] = [];
  for await (const piece of entry) pieces.push(piece);
  try {
    return JSON.parse(Buffer.concat(pieces).toString('utf8')) as unknown;
  } catch (fault) {
    throw notAPad(words(fault));
  }
}

async function receivePlan(
  entry: AsyncIterable<Uint8Array>,
  { type }: Headers,
  files: Files,
): Promise<Received> {
  if (type !== 'file') throw notAPad('a plan that is no file');
  return files.receive(entry);
}

async function receive(
  entry: AsyncIterable<Uint8Array>,
  { name, type }: Headers,
  files: Files,
): Promise<{ shelf: Shelf; received: Received }> {
  const [shelf, hash, ...more] = name.split('/');
  const known = SHELVES.find((each) => each === shelf);
  if (known === undefined || more.length > 0 || type !== 'file')
    throw notAPad(`something named ${name.slice(0, 60)}`);
  const received = await files.receive(entry);
  if (received.hash === hash) return { shelf: known, received };
  await files.drop(received);
  throw notAPad(`a picture that is not what its name says: ${name.slice(0, 60)}`);
}

export function notAPad(received: string): Refusal {
  return new Refusal({
    kind: 'not-understood',
    field: 'file',
    received,
    message: `Expected a pad that Plyhue has saved as a file, whole and unchanged, but found ${received}`,
    mend: 'Save the pad as a file again on the other computer and bring that file.',
  });
}

/** A full disk or a folder that cannot be written is not the file's fault. */
function isOfSystem(fault: unknown): boolean {
  return fault instanceof Error && 'syscall' in fault;
}

function words(fault: unknown): string {
  return fault instanceof Error ? fault.message : String(fault);
}
