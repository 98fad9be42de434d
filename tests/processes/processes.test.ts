import { createRequire } from 'node:module';
import { pathToFileURL } from 'node:url';
import { afterAll, describe, expect, it } from 'vitest';
import { Stopped, openProcesses } from '../../server/processes.ts';

const tsx = createRequire(import.meta.url).resolve('tsx');
const processes = openProcesses({
  server: new URL('../../server/serve-module.ts', import.meta.url),
  module: new URL('./misbehaving.ts', import.meta.url),
  execArgv: ['--import', pathToFileURL(tsx).href],
  megabytes: 512,
  idle: 300_000,
});
const ask = (name: string, task?: unknown, milliseconds = 300_000): Promise<unknown> =>
  processes.run(name, task, milliseconds);

afterAll(() => processes.close());

function runs(pid: number): boolean {
  try {
    return process.kill(pid, 0);
  } catch {
    return false;
  }
}

describe('work in processes of its own', () => {
  it('carries values, bytes and faults both ways, and keeps its process', async () => {
    const task = { bytes: Uint8Array.of(1, 2, 3), none: undefined, many: [1.5, null] };
    expect(await ask('echo', task)).toEqual(task);
    const first = await ask('who');
    await expect(ask('refuse')).rejects.toThrow(new RangeError('as asked'));
    expect(await ask('who')).toBe(first);
    expect(first).not.toBe(process.pid);
  });

  it.each(['spin', 'sleep'])(
    'is killed when it will not end (%s), and the next goes on',
    async (way) => {
      const pid = (await ask('who')) as number;
      await expect(ask(way, undefined, 300)).rejects.toMatchObject({ why: 'time' });
      await expect.poll(() => runs(pid)).toBe(false);
      expect(await ask('echo', 'next')).toBe('next');
    },
  );

  it('may break without breaking anything else', async () => {
    await expect(ask('crash')).rejects.toBeInstanceOf(Stopped);
    expect(await ask('echo', 'next')).toBe('next');
    process.kill((await ask('who')) as number, 'SIGKILL');
    await expect.poll(() => ask('echo', 'after a rest')).toBe('after a rest');
  });

  it.skipIf(process.platform !== 'linux')(
    'is held to its memory, pixels outside the heap among it (skipped where the system holds no such limit)',
    async () => {
      expect(await ask('hoard', 128)).toBe(8);
      await expect(ask('hoard', 1024)).rejects.toThrow();
      expect(await ask('echo', 'next')).toBe('next');
    },
  );

  it('starts as many as are asked at once', async () => {
    const pids = await Promise.all([ask('who'), ask('who')]);
    expect(new Set(pids).size).toBe(2);
  });
});
