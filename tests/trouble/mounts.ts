import { execFileSync } from 'node:child_process';
import { chmodSync, mkdirSync } from 'node:fs';
import { onTestFinished } from 'vitest';
import { newFolder } from '../store/folder.ts';

const run = (program: string, ...words: string[]): void => {
  execFileSync(program, words, { stdio: 'pipe' });
};

/** A disk of its own of so many kilobytes; null where this user may not mount one. */
export async function smallDisk(kilobytes: number): Promise<string | null> {
  const folder = `${await newFolder()}/disk`;
  mkdirSync(folder);
  try {
    run('mount', '-t', 'tmpfs', '-o', `size=${kilobytes}k`, 'plyhue-test', folder);
  } catch {
    return null;
  }
  onTestFinished(() => run('umount', '-l', folder));
  return folder;
}

/** Another way to a folder on which nothing can be written; for root, whom modes do not stop, a mount. Null where neither works. */
export async function readOnly(folder: string): Promise<string | null> {
  if (process.getuid?.() !== 0) {
    chmodSync(folder, 0o500);
    onTestFinished(() => chmodSync(folder, 0o700));
    return folder;
  }
  const way = `${await newFolder()}/read-only`;
  mkdirSync(way);
  try {
    run('mount', '--bind', folder, way);
  } catch {
    return null;
  }
  onTestFinished(() => run('umount', '-l', way));
  run('mount', '-o', 'remount,ro,bind', way);
  return way;
}
