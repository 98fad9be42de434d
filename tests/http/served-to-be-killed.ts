import { spawn } from 'node:child_process';
import { existsSync, readFileSync } from 'node:fs';

/** The service in a process of its own, which can be killed at any moment. */
export interface Served {
  readonly address: string;
  /** Files that the sweep at its start missed. */
  readonly missing: number;
  /** Kills it (SIGKILL) and waits until it is gone; what it had started itself is not killed. */
  kill(): Promise<void>;
  /** The processes that it has started, where the system tells. */
  helpers(): number[];
}

/** How the service is started: the words after `node`, and which desk reads the photos. */
export interface Start {
  readonly script: readonly string[];
  readonly desk: 'fake' | 'real';
}

export async function serve(folder: string, { script, desk }: Start): Promise<Served> {
  const child = spawn(process.execPath, [...script, folder], {
    env: { ...process.env, DESK: desk },
    stdio: ['ignore', 'pipe', 'inherit'],
  });
  const ended = new Promise<void>((resolve) => child.on('exit', () => resolve()));
  const line = await new Promise<string>((resolve, reject) => {
    child.stdout.once('data', (data: Buffer) => resolve(String(data)));
    child.on('exit', () => reject(new Error('the service did not start')));
  });
  const { port, missing } = JSON.parse(line) as { port: number; missing: number };
  return {
    address: `http://127.0.0.1:${port}`,
    missing,
    kill: async () => {
      child.kill('SIGKILL');
      await ended;
    },
    helpers: () => childrenOf(child.pid ?? 0),
  };
}

/** proc(5): a process names its children by thread. */
export function childrenOf(pid: number): number[] {
  const file = `/proc/${pid}/task/${pid}/children`;
  if (!existsSync(file)) return [];
  return readFileSync(file, 'utf8').split(' ').filter(Boolean).map(Number);
}
