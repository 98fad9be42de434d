import { rmSync } from 'node:fs';
import { join } from 'node:path';
import { compileAll } from '../compiled/compile.ts';
import { placeOf } from '../compiled/place-of.ts';

let made: Promise<string> | null = null;

/** Where a source file stands as JavaScript; made once for a run, and gone with it. */
export async function compiled(file: string): Promise<string> {
  made ??= compileAll().then((folder) => {
    process.once('exit', () => rmSync(folder, { recursive: true, force: true }));
    return folder;
  });
  return join(await made, placeOf(file));
}
