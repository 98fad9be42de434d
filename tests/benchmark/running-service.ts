import { spawn } from 'node:child_process';
import { existsSync, readFileSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import type { Pad, PhotoAnswer } from '../../server/contract/pads.ts';
import { form } from '../http/form.ts';

/** The service as it is started by hand, without the demo pad. */
export interface RunningService {
  readonly address: string;
  /** The most memory that it and each of its processes has held, added up, in MB; NaN where the system does not tell. */
  peakMegabytes(): number;
  alive(): boolean;
  stop(): Promise<void>;
}

export async function startService(folder: string): Promise<RunningService> {
  const main = fileURLToPath(new URL('../../server/main.ts', import.meta.url));
  const child = spawn(process.execPath, ['--import', 'tsx', main], {
    env: { ...process.env, DATA_DIR: folder, PORT: '0', HOST: '127.0.0.1', DEMO: 'off' },
    stdio: ['ignore', 'pipe', 'inherit'],
  });
  const ended = new Promise<void>((resolve) => child.on('exit', () => resolve()));
  const address = await new Promise<string>((resolve, reject) => {
    child.stdout.on('data', (data: Buffer) => {
      const found = /ready at (http:\S+)/.exec(String(data))?.[1];
      if (found !== undefined) resolve(found);
    });
    child.on('exit', () => reject(new Error('the service did not start')));
  });
  return {
    address,
    peakMegabytes: () =>
      [child.pid, ...childrenOf(child.pid)].reduce<number>((sum, pid) => sum + peakOf(pid), 0),
    alive: () => child.exitCode === null && child.signalCode === null,
    stop: async () => {
      child.kill('SIGTERM');
      await ended;
    },
  };
}

function childrenOf(pid: number | undefined): number[] {
  const file = `/proc/${pid ?? 0}/task/${pid ?? 0}/children`;
  if (!existsSync(file)) return [];
  return readFileSync(file, 'utf8').split(' ').filter(Boolean).map(Number);
}

function peakOf(pid: number | undefined): number {
  const status = `/proc/${pid ?? 0}/status`;
  if (!existsSync(status)) return Number.NaN;
  const kilobytes = /^VmHWM:\s+(\d+) kB$/m.exec(readFileSync(status, 'utf8'))?.[1];
  return Math.round(Number(kilobytes) / 1024);
}

export async function startPad(address: string): Promise<string> {
  const answer = await fetch(`${address}/api/pads`, {
    method: 'POST',
    headers: { 'content-type': 'application/json' },
    body: JSON.stringify({ name: 'Load', sheetSize: { width: '6 in', height: '6 in' } }),
  });
  return ((await answer.json()) as Pad).id;
}

export interface Sent {
  readonly status: number;
  readonly sides: number;
  readonly isProblem: boolean;
  readonly milliseconds: number;
}

/** Sends one photo; an answer that never comes counts as status 0. */
export async function sendPhoto(
  address: string,
  pad: string,
  bytes: Uint8Array,
  arrangement: string,
): Promise<Sent> {
  const { body, headers } = form([
    ['side', 'front'],
    ['arrangement', arrangement],
    ['photo', Buffer.from(bytes), 'photo.jpg'],
  ]);
  const start = performance.now();
  try {
    const answer = await fetch(`${address}/api/pads/${pad}/photos`, {
      method: 'POST',
      headers,
      body: new Uint8Array(body),
    });
    const kind = answer.headers.get('content-type') ?? '';
    const value = (await answer.json()) as Partial<PhotoAnswer>;
    return {
      status: answer.status,
      sides: value.sides?.length ?? 0,
      isProblem: kind.startsWith('application/problem+json'),
      milliseconds: performance.now() - start,
    };
  } catch {
    return { status: 0, sides: 0, isProblem: false, milliseconds: performance.now() - start };
  }
}

export function percentile(values: readonly number[], share: number): number {
  const sorted = [...values].sort((p, q) => p - q);
  return sorted[Math.min(sorted.length - 1, Math.floor(share * sorted.length))] ?? Number.NaN;
}
