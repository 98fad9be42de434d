/** Work that goes wrong in each of the ways in which a decoder can. */
import { spawnSync } from 'node:child_process';

export function echo(task: unknown): unknown {
  return task;
}

export function who(): number {
  return process.pid;
}

export function refuse(): never {
  throw new RangeError('as asked');
}

/** Never gives the thread back. */
export function spin(): never {
  for (;;);
}

/** Stands still inside a system call, where no thread could be stopped. */
export function sleep(): void {
  spawnSync('sleep', ['20']);
}

/** Takes memory outside the heap, and touches it. */
export function hoard(megabytes: number): number {
  const held: Uint8Array[] = [];
  for (let at = 0; at < megabytes; at += 16) held.push(new Uint8Array(16 * 2 ** 20).fill(at % 251));
  return held.length;
}

export function crash(): void {
  process.kill(process.pid, 'SIGSEGV');
}
