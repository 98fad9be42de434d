import { existsSync, mkdirSync, readFileSync, readdirSync, rmSync, symlinkSync } from 'node:fs';
import { mkdtempSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { dirname, join, relative } from 'node:path';
import { fileURLToPath } from 'node:url';
import ts from 'typescript';

const ROOT = fileURLToPath(new URL('../..', import.meta.url));
/** What is measured, and what of the tests it takes to measure it. */
const FOLDERS = ['server', 'tests/http', 'tests/benchmark/timed'];

let made: string | null = null;

/**
 * Where a source file stands as JavaScript. The service is measured as it is shipped, without a compiler in
 * its memory and its start; types are not checked here. Made once for a run, and gone with it.
 */
export function compiled(file: string): string {
  made ??= compileAll();
  return join(made, 'dist', file.replace(/\.ts$/, '.js'));
}

function compileAll(): string {
  const folder = mkdtempSync(join(tmpdir(), 'plyhue-compiled-'));
  process.once('exit', () => rmSync(folder, { recursive: true, force: true }));
  for (const name of ['node_modules', 'package.json', 'sample-swatches'])
    symlinkSync(join(ROOT, name), join(folder, name));
  for (const each of FOLDERS)
    for (const entry of readdirSync(join(ROOT, each), { recursive: true, encoding: 'utf8' }))
      if (entry.endsWith('.ts') && !entry.endsWith('.d.ts'))
        compileFile(join(ROOT, each, entry), folder);
  return folder;
}

function compileFile(file: string, folder: string): void {
  const { outputText } = ts.transpileModule(readFileSync(file, 'utf8'), {
    fileName: file,
    compilerOptions: {
      module: ts.ModuleKind.ESNext,
      target: ts.ScriptTarget.ES2023,
      verbatimModuleSyntax: true,
      rewriteRelativeImportExtensions: true,
    },
  });
  const target = join(folder, 'dist', relative(ROOT, file).replace(/\.ts$/, '.js'));
  if (!existsSync(dirname(target))) mkdirSync(dirname(target), { recursive: true });
  writeFileSync(target, outputText);
}
