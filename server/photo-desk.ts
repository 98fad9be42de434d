/** The desk where photos are read (in processes), plans made and pictures drawn (in a thread): the service never stands still. */
import { createRequire } from 'node:module';
import { availableParallelism } from 'node:os';
import { pathToFileURL } from 'node:url';
import { Piscina } from 'piscina';
import type {
  PhotoOfSides,
  PhotoOfSupplies,
  PlannedBatch,
  ReadSupply,
} from './from-photo-to-guide.ts';
import type { CutSettings } from './cutting/settings.ts';
import type { SheetCurve } from './plan/free/sheet-curve.ts';
import type { LayerAsk, LayerChoice } from './plan/layer-choices.ts';
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
  TouchTask,
} from './photo-worker.ts';
import { Stopped, openProcesses } from './processes.ts';
import { Refusal } from './refusals/refusal.ts';

export interface Desk {
  readSides(task: SidesTask): Promise<PhotoOfSides & Pictured>;
  readSupplies(task: SuppliesTask): Promise<PhotoOfSupplies & Pictured>;
  /** What lies under a touch; null where nothing plain lies. */
  readTouched(task: TouchTask): Promise<ReadSupply | null>;
  plan(task: PlanTask): Promise<PlannedBatch>;
  /**
   * What else a plan could be: the next best, one without a sheet, one with other sheets, mends, other
   * numbers of sheets. The search ends early when nobody waits for the answer any more.
   */
  others(planned: AgainTask['planned'], count: number, wait: Waiting): Promise<OtherPlan[]>;
  without(planned: AgainTask['planned'], sheet: string, wait: Waiting): Promise<OtherPlan>;
  /** What is known of the curve of a plan: something at once, and asked again more, until it is complete. */
  curve(
    planned: AgainTask['planned'],
    asked: { readonly settings: CutSettings; readonly plan: string },
    wait: Waiting,
  ): Promise<SheetCurve>;
  withSheets(
    planned: AgainTask['planned'],
    slots: Readonly<Record<string, string>>,
  ): Promise<PlannedBatch>;
  weakest(planned: AgainTask['planned']): Promise<WeakestCard | null>;
  /** What could lie in one layer of one card instead. */
  choices(planned: AgainTask['planned'], where: LayerAsk): Promise<LayerChoice[]>;
  guide(task: GuideTask): Promise<Uint8Array>;
  drawPng(svg: string, width: number): Promise<Uint8Array>;
  /** How many tasks are under way or wait. */
  load(): { readonly photos: number; readonly table: number };
  close(): Promise<void>;
}

/** How long someone waits for an answer, and whether she still does. */
export interface Waiting {
  readonly milliseconds: number;
  /** Aborted when she has gone on to something else. */
  readonly gone: AbortSignal;
}

export interface DeskLimits {
  readonly photoProcesses: number;
  /** Memory that the process of one photo may hold, in MB. */
  readonly photoMegabytes: number;
  /** Photos that may wait; the next one is refused as 'busy'. */
  readonly photosWaiting: number;
  readonly tableWaiting: number;
  /** After this a task is given up and its thread replaced, in milliseconds. */
  readonly photoPatience: number;
  readonly tablePatience: number;
}

/**
 * Processes by the machine. One reading a 12-megapixel photo holds about 400 MB at its peak, most of
 * it pixels outside the heap; so few of them, and photos wait as files.
 */
export function deskLimits(): DeskLimits {
  return {
    photoProcesses: Math.max(2, Math.min(4, availableParallelism() - 1)),
    photoMegabytes: 1536,
    photosWaiting: 64,
    tableWaiting: 256,
    photoPatience: 90_000,
    tablePatience: 60_000,
  };
}

export function openDesk(limits: DeskLimits = deskLimits()): Desk {
  const photos = openLine(photoProcesses(limits), {
    places: limits.photoProcesses,
    waiting: limits.photosWaiting,
    patience: limits.photoPatience,
  });
  const table = openLine(tableThread(), {
    places: 1,
    waiting: limits.tableWaiting,
    patience: limits.tablePatience,
  });

  async function again<T>(
    task: Pick<AgainTask, 'planned' | 'asked'>,
    { milliseconds, gone }: Waiting,
  ): Promise<T> {
    const left = new Int32Array(new SharedArrayBuffer(Int32Array.BYTES_PER_ELEMENT));
    const leave = (): void => void Atomics.store(left, 0, 1);
    if (gone.aborted) leave();
    gone.addEventListener('abort', leave);
    try {
      return await table.run<T>('again', { ...task, milliseconds, left });
    } finally {
      gone.removeEventListener('abort', leave);
    }
  }

  return {
    readSides: (task) => photos.run('sides', task),
    readSupplies: (task) => photos.run('supplies', task),
    readTouched: (task) => photos.run('touched', task),
    plan: (task) => table.run('plan', task),
    others: (planned, count, wait) => again({ planned, asked: { kind: 'others', count } }, wait),
    without: (planned, sheet, wait) => again({ planned, asked: { kind: 'without', sheet } }, wait),
    curve: (planned, asked, wait) => again({ planned, asked: { kind: 'curve', ...asked } }, wait),
    withSheets: (planned, slots) => again({ planned, asked: { kind: 'with', slots } }, AT_ONCE),
    weakest: (planned) => again({ planned, asked: { kind: 'weakest' } }, AT_ONCE),
    choices: (planned, where) => again({ planned, asked: { kind: 'choices', where } }, AT_ONCE),
    guide: (task) => table.run('guide', task),
    drawPng: (svg, width) => table.run('png', { svg, width }),
    load: () => ({ photos: photos.load(), table: table.load() }),
    close: async () => {
      await Promise.all([photos.close(), table.close()]);
    },
  };
}

/** For what is worked out without a search. */
const AT_ONCE: Waiting = { milliseconds: 0, gone: new AbortController().signal };

interface Line {
  run<T>(name: string, task: unknown): Promise<T>;
  load(): number;
  close(): Promise<void>;
}

/** Who does the work: called for no more tasks at once than there are places. */
interface Workers {
  run(name: string, task: unknown, milliseconds: number): Promise<unknown>;
  close(): Promise<void>;
}

interface LineSettings {
  readonly places: number;
  readonly waiting: number;
  readonly patience: number;
}

/** Workers and those who wait for one. The clock of a task starts when it has its worker, not when it joins. */
function openLine(workers: Workers, { places, waiting: most, patience }: LineSettings): Line {
  const waiting: (() => void)[] = [];
  let busy = 0;

  const takePlace = async (): Promise<void> => {
    if (busy < places) busy += 1;
    else if (waiting.length < most) await new Promise<void>((go) => waiting.push(go));
    else throw tooBusy(waiting.length + busy);
  };
  const givePlace = (): void => {
    const next = waiting.shift();
    if (next === undefined) busy -= 1;
    else next();
  };

  return {
    run: async <T>(name: string, task: unknown) => {
      await takePlace();
      try {
        const answer = (await workers.run(name, task, patience)) as Answer<T>;
        if ('refusal' in answer) throw new Refusal(answer.refusal);
        return answer.value;
      } catch (fault) {
        throw given(fault, patience);
      } finally {
        givePlace();
      }
    },
    load: () => busy + waiting.length,
    close: () => workers.close(),
  };
}

const COMPILED = import.meta.url.endsWith('.js');
const LATER = COMPILED ? [] : ['--import', readsSources()];

/** A file beside this one, compiled or not. */
function beside(name: string): URL {
  return new URL(`./${name}.${COMPILED ? 'js' : 'ts'}`, import.meta.url);
}

/** Photos come from outside, so each is decoded and read where it can be killed. */
function photoProcesses({ photoMegabytes }: DeskLimits): Workers {
  return openProcesses({
    server: beside('serve-module'),
    module: beside('photo-worker'),
    execArgv: LATER,
    megabytes: photoMegabytes,
    idle: 60_000,
  });
}

/** What the table asks is our own work and keeps what it laid out last: one thread. */
function tableThread(): Workers {
  const pool = new Piscina({
    filename: beside('photo-worker').href,
    execArgv: LATER,
    minThreads: 1,
    maxThreads: 1,
    idleTimeout: 60_000,
    closeTimeout: 60_000,
    resourceLimits: { maxOldGenerationSizeMb: 768 },
  });
  return {
    run: (name, task, milliseconds) =>
      pool.run(task, { name, signal: AbortSignal.timeout(milliseconds) }),
    close: () => pool.close(),
  };
}

/** A worker does not inherit the reading of .ts sources, so it is told to learn it first. */
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

/** A worker that was stopped or that ran out of memory says nothing for her to act on; this does. */
function given(fault: unknown, patience: number): unknown {
  if (!(fault instanceof Error)) return fault;
  if (fault.name === 'AbortError' || (fault instanceof Stopped && fault.why === 'time'))
    return new Refusal({
      kind: 'too-large',
      field: 'photo',
      received: null,
      message: `This took longer than ${Math.round(patience / 1000)} seconds and was stopped`,
      mend: 'Try a smaller picture, or fewer cards at once.',
    });
  if (isShortOfMemory(fault))
    return new Refusal({
      kind: 'too-large',
      field: 'photo',
      received: null,
      message: 'This needed more memory than one picture may take and was stopped',
      mend: 'Save the picture smaller and send it again.',
    });
  return fault;
}

/** A decoder that is refused memory ends its process, or its next array cannot be made. */
function isShortOfMemory(fault: Error): boolean {
  return (
    fault instanceof Stopped ||
    ('code' in fault && fault.code === 'ERR_WORKER_OUT_OF_MEMORY') ||
    (fault instanceof RangeError &&
      /allocation failed|Invalid typed array length/.test(fault.message))
  );
}
