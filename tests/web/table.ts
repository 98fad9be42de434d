import { execFileSync, spawn, type ChildProcess } from 'node:child_process';
import { mkdtemp, rm } from 'node:fs/promises';
import { createServer } from 'node:net';
import os from 'node:os';
import path from 'node:path';
import { fileURLToPath } from 'node:url';
import { chromium, type Browser, type BrowserContext, type Page } from 'playwright-core';
import { compiled } from '../compiled/compiled.ts';
import { findBrowser, NO_BROWSER } from './find-browser.ts';

export const project = fileURLToPath(new URL('../..', import.meta.url));

/** The three devices of her table. */
export const devices = {
  laptop: { viewport: { width: 1280, height: 800 }, hasTouch: false, isMobile: false },
  tablet: { viewport: { width: 820, height: 1180 }, hasTouch: true, isMobile: true },
  phone: { viewport: { width: 390, height: 844 }, hasTouch: true, isMobile: true },
} as const;
export type Device = keyof typeof devices;

/** The real service with a fresh store and the demo pad, and a browser before it. */
export interface Table {
  readonly address: string;
  readonly browser: Browser;
  /** Opens a page of its own memory; every fault that the page reports is noted in `faults`. */
  open(device: Device, more?: Parameters<Browser['newContext']>[0]): Promise<Seat>;
  close(): Promise<void>;
}

export interface Seat {
  readonly page: Page;
  readonly context: BrowserContext;
  readonly faults: string[];
}

/** Builds the page, starts the service (`main`, compiled) on a free port and waits until the demo pad is read. */
export async function layTable(main = compiled('server/main.ts')): Promise<Table> {
  const found = findBrowser();
  if (found === null) throw new Error(NO_BROWSER);
  buildPage();
  const folder = await mkdtemp(path.join(os.tmpdir(), 'plyhue-page-'));
  const port = await freePort();
  const address = `http://127.0.0.1:${port}`;
  const service = startService(port, folder, {}, main);
  service.stdout?.resume();
  await untilReady(address, service);
  const browser = await chromium.launch({
    executablePath: found,
    args: [
      '--headless',
      '--no-sandbox',
      '--disable-gpu',
      '--disable-quic',
      '--no-first-run',
      '--disable-background-networking',
      '--disable-component-update',
      '--disable-sync',
    ],
  });
  return {
    address,
    browser,
    open: (device, more) => sit(browser, address, device, more),
    close: async () => {
      await browser.close();
      await ended(service);
      await rm(folder, { recursive: true, force: true, maxRetries: 5 });
    },
  };
}

async function sit(
  browser: Browser,
  address: string,
  device: Device,
  more: Parameters<Browser['newContext']>[0] = {},
): Promise<Seat> {
  const context = await browser.newContext({
    ...devices[device],
    baseURL: address,
    locale: 'en-US',
    reducedMotion: 'reduce',
    // Only where its work is looked at: what it fetches cannot be intercepted.
    serviceWorkers: 'block',
    ...more,
  });
  // As in vitest.config.ts: it says that something hangs, not that the machine is busy.
  context.setDefaultTimeout(120_000);
  const page = await context.newPage();
  const faults: string[] = [];
  page.on('pageerror', (fault) => faults.push(fault.message));
  return { page, context, faults };
}

/** Builds the page as `npm start` does; the test runner's own NODE_ENV would make a page for developing. */
export function buildPage(): void {
  const vite = path.join(project, 'node_modules', 'vite', 'bin', 'vite.js');
  execFileSync(process.execPath, [vite, 'build', 'web', '--logLevel', 'error'], {
    cwd: project,
    env: { ...process.env, NODE_ENV: 'production' },
    stdio: 'inherit',
  });
}

/** The service as it is shipped; what it prints can be read from its standard output. */
export function startService(
  port: number,
  folder: string,
  more: Readonly<Record<string, string>> = {},
  main = compiled('server/main.ts'),
): ChildProcess {
  return spawn(process.execPath, [main], {
    cwd: project,
    env: { ...process.env, PORT: String(port), HOST: '127.0.0.1', DATA_DIR: folder, ...more },
    stdio: ['ignore', 'pipe', 'inherit'],
  });
}

/** Waits for the service and for the demo pad, which it reads from its photos at the first start. */
async function untilReady(address: string, service: ChildProcess): Promise<void> {
  const end = Date.now() + READY_WITHIN;
  while (Date.now() < end) {
    if (service.exitCode !== null) throw new Error('The service ended before it was ready.');
    if (await hasDemoPad(address)) return;
    await new Promise((resolve) => setTimeout(resolve, 250));
  }
  throw new Error('The service did not bring the demo pad within eight minutes.');
}

const READY_WITHIN = 480_000;

async function hasDemoPad(address: string): Promise<boolean> {
  try {
    const answer = (await (await fetch(`${address}/api/pads`)).json()) as
      { sheetCount: number }[] | { pads: { sheetCount: number }[] };
    const pads = Array.isArray(answer) ? answer : answer.pads;
    return pads.some(({ sheetCount }) => sheetCount >= 12);
  } catch {
    return false;
  }
}

export async function freePort(): Promise<number> {
  const probe = createServer();
  await new Promise<void>((resolve) => probe.listen(0, '127.0.0.1', resolve));
  const address = probe.address();
  await new Promise((resolve) => probe.close(resolve));
  if (address === null || typeof address === 'string') throw new Error('no free port');
  return address.port;
}

export async function ended(service: ChildProcess): Promise<void> {
  if (service.exitCode !== null) return;
  const gone = new Promise((resolve) => service.once('exit', resolve));
  service.kill('SIGTERM');
  const hard = setTimeout(() => service.kill('SIGKILL'), 5000);
  await gone;
  clearTimeout(hard);
}
