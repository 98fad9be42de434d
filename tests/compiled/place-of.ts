import { join } from 'node:path';

/** Where a source file stands in a folder that compile.ts has made. */
export function placeOf(file: string): string {
  return join('dist', file.replace(/\.ts$/, '.js'));
}
