/** The desk where photos are read, plans made and pictures drawn: worker threads, so that the service never stands still. */
import { createRequire } from 'node:module';
import { availableParallelism } from 'node:os';
import { pathToFileURL } from 'node:url';
import { Piscina } from 'piscina';
import type { PhotoOfSides, PhotoOfSupplies, PlannedBatch } from './from-photo-to-guide.ts';
import type { OtherPlan } from './plan/plan-desk.ts';
import type { WeakestCard } from './plan/weakest.ts';
import type {
  AgainTask,
  Answer,
  GuideTask,
  Pictured,
  PlanTask,
  SidesTask,
  SuppliesTask,
} from './photo-worker.ts';
import { Refusal } from './refusals/refusal.ts';

export interface Desk {
  readSides(task: SidesTask): Promise<PhotoOfSides & Pictured>;
  readSupplies(task: SuppliesTask): Promise<PhotoOfSupplies & Pictured>;
  plan(task: PlanTask): Promise<PlannedBatch>;
  /** What else a plan could be: the next best, one without a sheet, one with other sheets, mends. */
  others(planned: AgainTask['planned'], count: number, patience: number): Promise<OtherPlan[]>;
  without(planned: AgainTask['planned'], sheet: string, patience: number): Promise<OtherPlan>;
  withSheets(
    planned: AgainTask['planned'],
    slots: Readonly<Record<string, string>>,
  ): Promise<PlannedBatch>;
  weakest(planned: AgainTask['planned']): Promise<WeakestCard | null>;
  guide(task: GuideTask): Promise<Uint8Array>;
  drawPng(svg: string, width: number): Promise<Uint8Array>;
  /** How many tasks are under way or wait. */
  load(): { readonly photos: number; readonly table: number };
  close(): Promise<void>;
}

export interface DeskLimits {
  readonly photoThreads: number;
  /** Photos that may wait; the next one is refused as 'busy'. */
  readonly photosWaiting: number;
  readonly tableWaiting: number;
  /** After this a task is given up and its thread replaced, in milliseconds. */
  readonly photoPatience: number;
  readonly tablePatience: number;
}

/**
 * Threads by the machine. A thread reading a 12-megapixel photo holds about 400 MB at its peak, most of
 * it pixels outside the heap; so few threads, and photos wait as files.
 */
export function deskLimits(): DeskLimits {
  return {
    photoThreads: Math.max(2, Math.min(4, availableParallelism() - 1)),
    photosWaiting: 64,
    tableWaiting: 256,
    photoPatience: 90_000,
    tablePatience: 60_000,
  };
}

export function openDesk(limits: DeskLimits = deskLimits()): Desk {
  const photos = openLine(limits.photoThreads, limits.photosWaiting, limits.photoPatience);
  const table = openLine(1, limits.tableWaiting, limits.tablePatience);
  return {
    readSides: (task) => photos.run('sides', task),
    readSupplies: (task) => photos.run('supplies', task),
    plan: (task) => table.run('plan', task),
    others: (planned, count, milliseconds) =>
      table.run('again', { planned, asked: { kind: 'others', count }, milliseconds }),
    without: (planned, sheet, milliseconds) =>
      table.run('again', { planned, asked: { kind: 'without', sheet }, milliseconds }),
    withSheets: (planned, slots) =>
      table.run('again', { planned, asked: { kind: 'with', slots }, milliseconds: 0 }),
    weakest: (planned) =>
      table.run('again', { planned, asked: { kind: 'weakest' }, milliseconds: 0 }),
    guide: (task) => table.run('guide', task),
    drawPng: (svg, width) => table.run('png', { svg, width }),
    load: () => ({ photos: photos.load(), table: table.load() }),
    close: async () => {
      await Promise.all([photos.close(), table.close()]);
    },
  };
}

interface Line {
  run<T>(name: string, task: unknown): Promise<T>;
  load(): number;
  close(): Promise<void>;
}

/** Threads and those who wait for one. The clock of a task starts when it has its thread, not when it joins. */
function openLine(threads: number, most: number, patience: number): Line {
  const pool = openPool(threads);
  const waiting: (() => void)[] = [];
  let busy = 0;

  const takeThread = async (): Promise<void> => {
    if (busy < threads) busy += 1;
    else if (waiting.length < most) await new Promise<void>((go) => waiting.push(go));
    else throw tooBusy(waiting.length + busy);
  };
  const giveThread = (): void => {
    const next = waiting.shift();
    if (next === undefined) busy -= 1;
    else next();
  };

  return {
    run: async <T>(name: string, task: unknown) => {
      await takeThread();
      try {
        const signal = AbortSignal.timeout(patience);
        const answer = (await pool.run(task, { name, signal })) as Answer<T>;
        if ('refusal' in answer) throw new Refusal(answer.refusal);
        return answer.value;
      } catch (fault) {
        throw given(fault, patience);
      } finally {
        giveThread();
      }
    },
    load: () => busy + waiting.length,
    close: () => pool.close(),
  };
}

/** Beside this file stands the worker, compiled or not. */
function openPool(threads: number): Piscina {
  const compiled = import.meta.url.endsWith('.js');
  const filename = new URL(compiled ? './photo-worker.js' : './photo-worker.ts', import.meta.url);
  return new Piscina({
    filename: filename.href,
    execArgv: compiled ? [] : ['--import', readsSources()],
    minThreads: 1,
    maxThreads: threads,
    idleTimeout: 60_000,
    closeTimeout: 60_000,
    resourceLimits: { maxOldGenerationSizeMb: 768 },
  });
}

/** A thread does not inherit the reading of .ts sources, so it is told to learn it first. */
function readsSources(): string {
  const api = pathToFileURL(createRequire(import.meta.url).resolve('tsx/esm/api')).href;
  const script = `import { register } from '${api.replace(/cjs$/, 'mjs')}'; register();`;
  return `data:text/javascript,${encodeURIComponent(script)}`;
}

function tooBusy(ahead: number): Refusal {
  return new Refusal({
    kind: 'busy',
    field: 'photo',
    received: null,
    message: `There are ${ahead} pictures being worked on already`,
    mend: 'Wait a moment, then send it again; nothing is lost by waiting.',
  });
}

/** A thread that was stopped or that ran out of memory says nothing for her to act on; this does. */
function given(fault: unknown, patience: number): unknown {
  if (!(fault instanceof Error)) return fault;
  if (fault.name === 'AbortError')
    return new Refusal({
      kind: 'too-large',
      field: 'photo',
      received: null,
      message: `This took longer than ${Math.round(patience / 1000)} seconds and was stopped`,
      mend: 'Try a smaller picture, or fewer cards at once.',
    });
  if ('code' in fault && fault.code === 'ERR_WORKER_OUT_OF_MEMORY')
    return new Refusal({
      kind: 'too-large',
      field: 'photo',
      received: null,
      message: 'This needed more memory than one picture may take and was stopped',
      mend: 'Save the picture smaller and send it again.',
    });
  return fault;
}
