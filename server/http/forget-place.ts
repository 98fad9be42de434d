import { readFile } from 'node:fs/promises';
import { withoutPlace } from '../images/without-place.ts';
import type { Files, Received } from '../store/files.ts';
import { once } from '../store/once.ts';

/** A photo that has come in, without the place where it was taken; the one that tells of it is dropped. */
export async function forgetPlace(received: Received, files: Files): Promise<Received> {
  let without: Buffer;
  try {
    const bytes = await readFile(received.path);
    without = withoutPlace(bytes);
    if (without === bytes) return received;
  } catch (error) {
    await files.drop(received);
    throw error;
  }
  await files.drop(received);
  return files.receive(once(without));
}
