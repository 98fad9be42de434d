/** What the workers (processes for photos, a thread for the table) do: the steps of the story that take long, each with values in and values out. */
import { readFile } from 'node:fs/promises';
import { planOnTable } from './batches-on-table.ts';
import type { LyingBatch } from './batches-on-table.ts';
import type { Lab } from './colour/lab.ts';
import type { Size } from './lengths/length.ts';
import {
  planFreeBatch,
  printGuide,
  readSidesIn,
  readSuppliesIn,
  readTouched,
} from './from-photo-to-guide.ts';
import type {
  PhotoOfSides,
  PhotoOfSupplies,
  PlannedBatch,
  PlanWishes,
  ReadSupply,
  Touch,
  Wish,
} from './from-photo-to-guide.ts';
import {
  choicesOf,
  curveOf,
  otherPlans,
  weakestOf,
  withSheets,
  withoutSheet,
} from './other-plans.ts';
import type { Anew, Planned } from './other-plans.ts';
import type { CutSettings } from './cutting/settings.ts';
import type { GuideAsk } from './guide/ask.ts';
import { drawPng } from './images/draw-png.ts';
import { openPhoto } from './images/open-photo.ts';
import { printPicture } from './images/print-picture.ts';
import { screenPicture } from './images/screen-picture.ts';
import { answerWith as answer } from './line.ts';
import type { Answer } from './line.ts';
import type { Tap } from './photo/picture.ts';
import type { OpenCurve, SheetCurve } from './plan/free/sheet-curve.ts';
import type { LayerAsk } from './plan/layer-choices.ts';
import type { PrintPaper } from './printing/guide-pdf.ts';

export interface SidesTask {
  readonly file: string;
  readonly sheetSize: Size;
  readonly tap: Tap;
  /** The colours of the scraps that tie the pad's photos together, where a photo has defined them. */
  readonly chipColours: readonly Lab[];
}

export interface SuppliesTask {
  readonly file: string;
  readonly tap: Tap;
  /** What the scraps look like that tie it to the photos of a pad; none when it is tied to none. */
  readonly chipColours?: readonly Lab[];
}

export interface PlanTask {
  readonly wishes: readonly Wish[];
  readonly ask: Omit<PlanWishes, 'limit'>;
  readonly settings: CutSettings;
  /** Up to so many sheets, each cut as suits best; left out: as few as can be cut. */
  readonly sheets?: number;
  /** The plan whose other cards stay as they lie where that costs next to nothing. */
  readonly before?: LyingBatch;
  /** How long the search for the best plan may take; a plan that is proven best comes sooner. */
  readonly milliseconds: number;
}

export interface GuideTask {
  readonly ask: Omit<GuideAsk, 'picture'>;
  /** Swatch files by the id of their side. */
  readonly swatchFiles: Readonly<Record<string, string>>;
  readonly paper: PrintPaper;
  /** When the plan was made, as ISO 8601 text: the same plan prints the same bytes. */
  readonly made: string;
}

/** With the photo, shrunk for the screen. */
export interface Pictured {
  readonly picture: Uint8Array;
}

export async function sides(task: SidesTask): Promise<Answer<PhotoOfSides & Pictured>> {
  return answer(async () => {
    const photo = await openPhoto(await readFile(task.file));
    const read = await readSidesIn(photo, task.sheetSize, task.tap, task.chipColours);
    return { ...read, picture: await screenPicture(photo) };
  });
}

export async function supplies(task: SuppliesTask): Promise<Answer<PhotoOfSupplies & Pictured>> {
  return answer(async () => {
    const photo = await openPhoto(await readFile(task.file));
    const read = readSuppliesIn(photo, task.tap, task.chipColours);
    return { ...read, picture: await screenPicture(photo) };
  });
}

export interface TouchTask extends Touch {
  readonly file: string;
}

export async function touched(task: TouchTask): Promise<Answer<ReadSupply | null>> {
  const { file, ...touch } = task;
  return answer(async () => readTouched(await readFile(file), touch));
}

export async function plan(task: PlanTask): Promise<Answer<PlannedBatch>> {
  const end = performance.now() + task.milliseconds;
  const limit = { until: () => performance.now() > end };
  const { wishes, ask, settings, sheets } = task;
  return answer(() =>
    Promise.resolve(
      sheets === undefined
        ? planOnTable({ ...task, ask: { ...ask, limit } })
        : planFreeBatch(wishes, { ...ask, limit }, settings, sheets),
    ),
  );
}

/** A plan on the table, and what is asked of it. */
export interface AgainTask {
  readonly planned: Omit<Planned, 'ask'> & { readonly ask: Omit<PlanWishes, 'limit'> };
  readonly asked:
    | { readonly kind: 'others'; readonly count: number }
    | { readonly kind: 'without'; readonly sheet: string }
    | {
        readonly kind: 'with';
        readonly slots: Readonly<Record<string, string>>;
        readonly anew: Anew | null;
      }
    | { readonly kind: 'weakest' }
    | { readonly kind: 'choices'; readonly where: LayerAsk }
    | {
        readonly kind: 'curve';
        readonly settings: CutSettings;
        /** The id of the plan: its curve stays open between two questions. */
        readonly plan: string;
      };
  /** For each number of sheets, when a curve is asked. */
  readonly milliseconds: number;
  /** Shared memory that is no longer 0 when nobody waits for the answer any more. */
  readonly left: Int32Array;
}

export async function again(task: AgainTask): Promise<Answer<unknown>> {
  const limitOf = (): PlanWishes['limit'] => {
    const end = performance.now() + task.milliseconds;
    return { until: () => performance.now() > end || Atomics.load(task.left, 0) !== 0 };
  };
  const { batch, ask } = task.planned;
  const planned = { batch, ask: { ...ask, limit: limitOf() } };
  const { asked } = task;
  return answer(() => {
    switch (asked.kind) {
      case 'others':
        return Promise.resolve<unknown>(otherPlans(planned, asked.count));
      case 'without':
        return Promise.resolve<unknown>(withoutSheet(planned, asked.sheet));
      case 'with':
        return Promise.resolve<unknown>(withSheets(planned, asked.slots, asked.anew));
      case 'weakest':
        return Promise.resolve<unknown>(weakestOf(planned));
      case 'choices':
        return Promise.resolve<unknown>(choicesOf(planned, asked.where));
      case 'curve':
        return Promise.resolve<unknown>(curveBitByBit(planned, asked, limitOf, task.left));
    }
  });
}

/** The curves that were asked for last stay open, so that asking again goes on where it was. */
const openCurves = new Map<string, OpenCurve>();
const MOST_OPEN = 2;

/** The first answer is what the plan itself tells, at once; each further one comes after a part of the work. */
const PART_MILLISECONDS = 700;

function curveBitByBit(
  planned: Planned,
  { settings, plan: id }: Extract<AgainTask['asked'], { kind: 'curve' }>,
  limitOf: () => PlanWishes['limit'],
  left: Int32Array,
): SheetCurve {
  const open = openCurves.get(id);
  const curve = open ?? curveOf(planned, settings);
  openCurves.delete(id);
  openCurves.set(id, curve);
  const [oldest] = openCurves.keys();
  if (openCurves.size > MOST_OPEN) openCurves.delete(oldest!);
  const end = performance.now() + (open === undefined ? 0 : PART_MILLISECONDS);
  const isWanted = (): boolean => performance.now() < end && Atomics.load(left, 0) === 0;
  while (!curve.known().complete && isWanted()) curve.goOn(limitOf());
  return curve.known();
}

export async function guide(task: GuideTask): Promise<Answer<Uint8Array>> {
  const { ask, swatchFiles, paper, made } = task;
  return answer(async () => {
    const pictures = new Map<string, Uint8Array>();
    await Promise.all(
      Object.entries(swatchFiles).map(async ([side, file]) => {
        // A file that is gone or damaged costs its paper the print, and not her the guide.
        const bytes = await readFile(file).catch(nullIfGone);
        const picture = bytes === null ? null : await printPicture(bytes).catch(() => null);
        if (picture !== null) pictures.set(side, picture);
      }),
    );
    const picture = (side: string): string | null => (pictures.has(side) ? side : null);
    return printGuide({ ...ask, picture }, pictures, paper, new Date(made));
  });
}

/** Any other fault passes, so that the guide can be asked for again. */
function nullIfGone(fault: unknown): null {
  if (fault instanceof Error && 'code' in fault && fault.code === 'ENOENT') return null;
  throw fault;
}

export async function png(task: { svg: string; width: number }): Promise<Answer<Uint8Array>> {
  return answer(() => drawPng(task.svg, task.width));
}
