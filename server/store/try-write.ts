import type { Files } from './files.ts';

/** As much as a small picture: a disk may be full for it that still takes a line. */
const BYTES = 65_536;

/** Writes a small file, down to the disk, and takes it away again: what hinders that, or null when nothing does. */
export async function tryWrite({
  receive,
  drop,
}: Pick<Files, 'receive' | 'drop'>): Promise<unknown> {
  try {
    await drop(await receive(someBytes()));
    return null;
  } catch (fault) {
    return fault;
  }
}

// eslint-disable-next-line @typescript-eslint/require-await -- files are received as they come in
async function* someBytes(): AsyncGenerator<Uint8Array> {
  yield new Uint8Array(BYTES);
}
