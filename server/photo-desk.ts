/** The desk where photos are read (in processes), plans made and pictures drawn (in a thread): the service never stands still. */
import { availableParallelism } from 'node:os';
import type {
  PhotoOfSides,
  PhotoOfSupplies,
  PlannedBatch,
  ReadSupply,
} from './from-photo-to-guide.ts';
import type { CutSettings } from './cutting/settings.ts';
import type { SheetCurve } from './plan/free/sheet-curve.ts';
import type { LayerAsk, LayerChoice } from './plan/layer-choices.ts';
import type { Anew } from './other-plans.ts';
import type { OtherPlan } from './plan/plan-desk.ts';
import type { WeakestCard } from './plan/weakest.ts';
import type {
  AgainTask,
  GuideTask,
  Pictured,
  PlanTask,
  SidesTask,
  SuppliesTask,
  TouchTask,
} from './photo-worker.ts';
import { openClerk } from './clerk.ts';
import type { Clerk } from './clerk.ts';
import { openLine } from './line.ts';
import type { Workers } from './line.ts';
import { openProcesses } from './processes.ts';
import { READING, beside } from './running-code.ts';
import { openThread } from './thread.ts';

export interface Desk {
  readonly clerk: Clerk;
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
  /** With `anew` where the wishes are others than those it was planned by, which takes a search. */
  withSheets(
    planned: AgainTask['planned'],
    slots: Readonly<Record<string, string>>,
    anew?: Waiting & { readonly among: Anew },
  ): Promise<PlannedBatch>;
  weakest(planned: AgainTask['planned']): Promise<WeakestCard | null>;
  /** What could lie in one layer of one card instead. */
  choices(planned: AgainTask['planned'], where: LayerAsk): Promise<LayerChoice[]>;
  guide(task: GuideTask): Promise<Uint8Array>;
  drawPng(svg: string, width: number): Promise<Uint8Array>;
  /** How many tasks are under way or wait. */
  load(): { readonly photos: number; readonly table: number; readonly clerk: number };
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
    about: 'photo',
  });
  const table = openLine(openThread(beside('photo-worker')), {
    places: 1,
    waiting: limits.tableWaiting,
    patience: limits.tablePatience,
    about: 'plan',
  });

  const { clerk, line } = openClerk();

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
    clerk,
    readSides: (task) => photos.run('sides', task),
    readSupplies: (task) => photos.run('supplies', task),
    readTouched: (task) => photos.run('touched', task),
    plan: (task) => table.run('plan', task),
    others: (planned, count, wait) => again({ planned, asked: { kind: 'others', count } }, wait),
    without: (planned, sheet, wait) => again({ planned, asked: { kind: 'without', sheet } }, wait),
    curve: (planned, asked, wait) => again({ planned, asked: { kind: 'curve', ...asked } }, wait),
    withSheets: (planned, slots, anew) =>
      again(
        { planned, asked: { kind: 'with', slots, anew: anew?.among ?? null } },
        anew ?? AT_ONCE,
      ),
    weakest: (planned) => again({ planned, asked: { kind: 'weakest' } }, AT_ONCE),
    choices: (planned, where) => again({ planned, asked: { kind: 'choices', where } }, AT_ONCE),
    guide: (task) => table.run('guide', task),
    drawPng: (svg, width) => table.run('png', { svg, width }),
    load: () => ({ photos: photos.load(), table: table.load(), clerk: line.load() }),
    close: async () => {
      await Promise.all([photos.close(), table.close(), line.close()]);
    },
  };
}

/** For what is worked out without a search. */
const AT_ONCE: Waiting = { milliseconds: 0, gone: new AbortController().signal };

/** Photos come from outside, so each is decoded and read where it can be killed. */
function photoProcesses({ photoMegabytes }: DeskLimits): Workers {
  return openProcesses({
    server: beside('serve-module'),
    module: beside('photo-worker'),
    execArgv: [...READING],
    megabytes: photoMegabytes,
    idle: 60_000,
  });
}
