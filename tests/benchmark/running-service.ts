import { spawn } from 'node:child_process';
import { existsSync, readFileSync, readdirSync } from 'node:fs';
import { mkdtemp, readFile, rm } from 'node:fs/promises';
import { request } from 'node:http';
import type { IncomingHttpHeaders } from 'node:http';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import type { Pad, PhotoAnswer } from '../../server/contract/pads.ts';
import { form } from '../http/form.ts';
import { childrenOf } from '../http/served-to-be-killed.ts';
import { compiled } from './compiled.ts';

/** The service as it is started by hand, without the demo pad. */
export interface RunningService {
  readonly address: string;
  /** Memory of the service itself now, in MB; this and what follows are NaN where the system does not tell. */
  megabytes(): number;
  openFiles(): number;
  /** The most memory that it and each of its processes has held, added up, in MB. */
  peakMegabytes(): number;
  /** Processor time of it and its processes. */
  processorSeconds(): number;
  alive(): boolean;
  stop(): Promise<void>;
}

/** With a number of a core it is held to that one, where the system has `taskset`. */
export async function startService(
  folder: string,
  settings: Readonly<Record<string, string>> = {},
  core: number | null = null,
): Promise<RunningService> {
  const words = [process.execPath, await compiled('server/main.ts')];
  // sched_setaffinity(2), by util-linux: it and all that it starts stay on that core.
  const [command, ...more] = core === null ? words : ['taskset', '-c', String(core), ...words];
  const child = spawn(command!, more, {
    env: {
      ...process.env,
      DATA_DIR: folder,
      PORT: '0',
      HOST: '127.0.0.1',
      DEMO: 'off',
      ...settings,
    },
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
  const pids = (): number[] => [child.pid ?? 0, ...childrenOf(child.pid ?? 0)];
  return {
    address,
    megabytes: () => (child.pid === undefined ? Number.NaN : memoryOf(child.pid, 'VmRSS')),
    openFiles: () => {
      const folder = `/proc/${child.pid ?? 0}/fd`;
      return existsSync(folder) ? readdirSync(folder).length : Number.NaN;
    },
    peakMegabytes: () => sumOf(pids().map((pid) => memoryOf(pid, 'VmHWM'))),
    processorSeconds: () => sumOf(pids().map(processorSecondsOf)),
    alive: () => child.exitCode === null && child.signalCode === null,
    stop: async () => {
      child.kill('SIGTERM');
      await ended;
    },
  };
}

function sumOf(values: readonly number[]): number {
  return values.reduce((sum, value) => sum + value, 0);
}

/** proc(5), status: VmRSS is what is held now, VmHWM the most that was. */
function memoryOf(pid: number, field: 'VmRSS' | 'VmHWM'): number {
  const status = `/proc/${pid}/status`;
  if (!existsSync(status)) return Number.NaN;
  const kilobytes = new RegExp(`^${field}:\\s+(\\d+) kB$`, 'm').exec(
    readFileSync(status, 'utf8'),
  )?.[1];
  return Math.round(Number(kilobytes) / 1024);
}

/** proc(5), stat, fields 14 to 17: user and system time of it and of its children that have ended, in hundredths of a second. */
function processorSecondsOf(pid: number): number {
  const stat = `/proc/${pid}/stat`;
  if (!existsSync(stat)) return Number.NaN;
  const fields = readFileSync(stat, 'utf8').split(') ')[1]!.split(' ');
  return sumOf(fields.slice(11, 15).map(Number)) / 100;
}

export async function inFolder<T>(work: (folder: string) => Promise<T>): Promise<T> {
  const folder = await mkdtemp(join(tmpdir(), 'plyhue-trust-'));
  try {
    return await work(folder);
  } finally {
    await rm(folder, { recursive: true, force: true });
  }
}

export function samplePhoto(): Promise<Buffer> {
  return readFile(
    fileURLToPath(new URL('../../sample-swatches/tidewrack-a-front.jpg', import.meta.url)),
  );
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
  /** 'read', the kind of problem, or 'broken off'. */
  readonly kind: string;
  /** When to come back, as it was told; null when it was not. */
  readonly retryAfter: string | null;
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
    const answer = await post(`${address}/api/pads/${pad}/photos`, headers, body);
    const type = answer.headers['content-type'] ?? '';
    const value = JSON.parse(answer.text) as Partial<PhotoAnswer> & Told;
    return {
      status: answer.status,
      sides: value.sides?.length ?? 0,
      isProblem: type.startsWith('application/problem+json'),
      kind: answer.status === 201 ? 'read' : kindOf(value),
      retryAfter: answer.headers['retry-after'] ?? null,
      milliseconds: performance.now() - start,
    };
  } catch {
    const milliseconds = performance.now() - start;
    return {
      status: 0,
      sides: 0,
      isProblem: false,
      kind: 'broken off',
      retryAfter: null,
      milliseconds,
    };
  }
}

interface Answered {
  readonly status: number;
  readonly headers: IncomingHttpHeaders;
  readonly text: string;
}

/** By hand, because `fetch` gives up after five minutes, and the last of a crowd may wait longer on a busy machine. */
function post(url: string, headers: Record<string, string>, body: Buffer): Promise<Answered> {
  return new Promise((resolve, reject) => {
    const asked = request(url, { method: 'POST', headers, agent: false }, (answer) => {
      const pieces: Buffer[] = [];
      answer.on('data', (piece: Buffer) => pieces.push(piece));
      answer.on('error', reject);
      answer.on('end', () =>
        resolve({
          status: answer.statusCode ?? 0,
          headers: answer.headers,
          text: Buffer.concat(pieces).toString(),
        }),
      );
    });
    asked.on('error', reject);
    asked.end(body);
  });
}

interface Told {
  readonly type?: string;
  readonly detail?: string;
}

/** A process that had to be killed is told apart from a picture that was refused by its size. */
function kindOf({ type = '', detail = '' }: Told): string {
  const kind = type.replace('/problems/', '');
  if (!detail.includes('was stopped')) return kind;
  return detail.includes('memory') ? 'stopped for memory' : 'stopped for time';
}

export function percentile(values: readonly number[], share: number): number {
  const sorted = [...values].sort((p, q) => p - q);
  return sorted[Math.min(sorted.length - 1, Math.floor(share * sorted.length))] ?? Number.NaN;
}
