import {
  mkdirSync,
  mkdtempSync,
  readFileSync,
  readdirSync,
  symlinkSync,
  writeFileSync,
} from 'node:fs';
import { tmpdir } from 'node:os';
import { dirname, join, relative } from 'node:path';
import { fileURLToPath } from 'node:url';
import { transformWithOxc } from 'vite';
import { placeOf } from './place-of.ts';

const ROOT = fileURLToPath(new URL('../..', import.meta.url));
/** What is run compiled, and what of the tests is run with it. */
const FOLDERS = ['server', 'tests/http', 'tests/store', 'tests/benchmark/timed'];

/**
 * Makes a folder in which the service stands as JavaScript, as it is shipped: it starts three times as fast as from
 * its sources, and no compiler is in its memory. Types are not checked here. Who asks for it removes it.
 */
export async function compileAll(): Promise<string> {
  const folder = mkdtempSync(join(tmpdir(), 'plyhue-compiled-'));
  for (const name of ['node_modules', 'package.json', 'sample-swatches'])
    symlinkSync(join(ROOT, name), join(folder, name));
  const files = FOLDERS.flatMap((each) =>
    readdirSync(join(ROOT, each), { recursive: true, encoding: 'utf8' })
      .filter((entry) => /(?<!\.test|\.d)\.ts$/.test(entry))
      .map((entry) => join(ROOT, each, entry)),
  );
  await Promise.all(files.map((file) => compileFile(file, folder)));
  // The page is built by who wants to see it.
  symlinkSync(join(ROOT, 'dist', 'web'), join(folder, 'dist', 'web'));
  return folder;
}

async function compileFile(file: string, folder: string): Promise<void> {
  const { code } = await transformWithOxc(readFileSync(file, 'utf8'), file, {
    target: 'es2023',
    typescript: { rewriteImportExtensions: 'rewrite' },
    sourcemap: false,
  });
  const target = join(folder, placeOf(relative(ROOT, file)));
  mkdirSync(dirname(target), { recursive: true });
  writeFileSync(target, code);
}
