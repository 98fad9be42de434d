import { layBatch, planFreeBatch, printGuide } from '../../server/from-photo-to-guide.ts';
import type {
  LaidBatch,
  PhotoOfSides,
  PlannedBatch,
  ReadSide,
} from '../../server/from-photo-to-guide.ts';
import type { Before } from '../../server/plan/as-it-lies.ts';
import {
  choicesOf,
  curveOf,
  otherPlans,
  weakestOf,
  withSheets,
  withoutSheet,
} from '../../server/other-plans.ts';
import { labDistance } from '../../server/colour/difference.ts';
import type { Lab } from '../../server/colour/lab.ts';
import type { Quad } from '../../server/geometry/points.ts';
import type { Spot, Tap } from '../../server/photo/picture.ts';
import type { OpenCurve } from '../../server/plan/free/sheet-curve.ts';
import type { Clerk } from '../../server/clerk.ts';
import * as work from '../../server/clerk-worker.ts';
import type { Answer } from '../../server/line.ts';
import type { Desk } from '../../server/photo-desk.ts';
import { Refusal } from '../../server/refusals/refusal.ts';
import { readFile } from 'node:fs/promises';

/** What a photo of the fake desk shows: papers by their colour and where they lie, on a grid of three a row. */
export interface Scene {
  readonly papers: readonly { readonly l: number; readonly a: number; readonly b: number }[];
  /** The camera stepped aside by so many pixels. */
  readonly shift?: number;
  /** Places of the squares or smears in which the light mirrors, from 0. */
  readonly glossy?: readonly number[];
}

/** A 'photo' that the fake desk reads: its scene as JSON. */
export function photoOf(scene: Scene): Buffer {
  return Buffer.from(JSON.stringify(scene));
}

/** Papers that differ in colour, `count` of them; another seed gives others. */
export function papers(count: number, seed = 0): Scene['papers'] {
  return Array.from({ length: count }, (_, at) => {
    const turn = (at + seed * 7) * 2.399963;
    return { l: 45 + ((at * 13 + seed * 5) % 40), a: 40 * Math.cos(turn), b: 40 * Math.sin(turn) };
  });
}

const STEPS = { steps: 2000 };
const FEW_STEPS = { steps: 200 };

function planNear(laid: LaidBatch, before: Before | undefined): PlannedBatch {
  return before === undefined ? laid.batch : laid.asItLies(before);
}

/** Does at once, from a scene in JSON, what the real desk reads from pixels; plans for real. */
export function fakeDesk(): Desk {
  const curves = new Map<string, OpenCurve>();
  return {
    clerk: clerkHere(),
    readSides: async ({ file, tap, chipColours }) => {
      const scene = await sceneIn(file);
      const reading = { ...readingOf(scene), ...shownIn(tap, chipColours) };
      if (tap.corners === undefined) return reading;
      const [first] = reading.sides;
      const sides = tap.corners.map((corners) => ({ ...first!, corners, notes: ['tapped'] }));
      return { ...reading, sides };
    },
    readSupplies: async ({ file, tap, chipColours = [] }) => {
      const scene = await sceneIn(file);
      const { width, height, notes, picture } = readingOf(scene);
      const { white } = shownIn(tap, chipColours);
      const chips = scrapsAmong(scene, tap.chips ?? [], chipColours);
      const supplies = scene.papers.map((lab, at) => ({
        corners: cornersAt(at, 0),
        lab,
        uncertainty: 1.2,
        glossy: scene.glossy?.includes(at) ?? false,
      }));
      // Tied, all look a little lighter.
      const at = tap.corners?.map((corners) => ({
        ...(supplies.find((one) => one.corners[0].x === corners[0].x) ?? supplies[0]!),
        corners,
      }));
      const read = (at ?? supplies).map((one) =>
        chips.tie === 'tied' ? { ...one, lab: { ...one.lab, l: one.lab.l + 1 } } : one,
      );
      return { width, height, white, chips, notes, picture, supplies: read };
    },
    readTouched: async ({ file, at }) => {
      const scene = await sceneIn(file);
      const lies = scene.papers.findIndex((_, index) => {
        const [corner] = cornersAt(index, scene.shift ?? 0);
        return Math.abs(at.x - corner.x - 500) < 500 && Math.abs(at.y - corner.y - 500) < 500;
      });
      const lab = scene.papers[lies];
      return lab === undefined
        ? null
        : { corners: aroundOf(at), lab, uncertainty: 1.2, glossy: false };
    },
    plan: ({ wishes, ask, settings, sheets, before }) =>
      Promise.resolve().then(() =>
        sheets === undefined
          ? planNear(layBatch(wishes, { ...ask, limit: STEPS }, settings), before)
          : planFreeBatch(wishes, { ...ask, limit: FEW_STEPS }, settings, sheets),
      ),
    curve: ({ batch, ask }, { settings, plan }) =>
      Promise.resolve().then(() => {
        const open = curves.get(plan);
        const curve = open ?? curveOf({ batch, ask: { ...ask, limit: FEW_STEPS } }, settings);
        curves.set(plan, curve);
        while (open !== undefined && !curve.known().complete) curve.goOn(FEW_STEPS);
        return curve.known();
      }),
    others: ({ batch, ask }, count) =>
      Promise.resolve(otherPlans({ batch, ask: { ...ask, limit: STEPS } }, count)),
    without: ({ batch, ask }, sheet) =>
      Promise.resolve().then(() => withoutSheet({ batch, ask: { ...ask, limit: STEPS } }, sheet)),
    withSheets: ({ batch, ask }, slots, anew) =>
      Promise.resolve().then(() =>
        withSheets({ batch, ask: { ...ask, limit: STEPS } }, slots, anew?.among ?? null),
      ),
    weakest: ({ batch, ask }) =>
      Promise.resolve(weakestOf({ batch, ask: { ...ask, limit: STEPS } })),
    choices: ({ batch, ask }, where) =>
      Promise.resolve(choicesOf({ batch, ask: { ...ask, limit: STEPS } }, where)),
    guide: ({ ask, paper, made }) =>
      printGuide({ ...ask, picture: () => null }, new Map(), paper, new Date(made)),
    drawPng: (svg, width) => Promise.resolve(Buffer.from(`PNG ${width} of ${svg.length}`)),
    load: () => ({ photos: 0, table: 0, clerk: 0 }),
    close: () => Promise.resolve(),
  };
}

/** The work of the clerk, done at once instead of in its thread; what goes there is cloned as it would be. */
function clerkHere(): Clerk {
  const done = async <T>(answer: Promise<Answer<T>>): Promise<T> => {
    const given = await answer;
    if ('refusal' in given) throw new Refusal(given.refusal);
    return structuredClone(given.value);
  };
  return {
    group: (sheets) => done(work.group(structuredClone(sheets))),
    pairs: (sides, most) => done(work.pairs(structuredClone({ sides, most }))),
    companions: (side, others) => done(work.companions(structuredClone({ side, others }))),
    guideOnScreen: (ask) => done(work.guide(structuredClone(ask))),
    cutsOnScreen: (ask) => done(work.cuts(structuredClone(ask))),
    stockDrawing: (ask, id) => done(work.stock(structuredClone({ ask, id }))),
    classSet: (ask) => done(work.people(structuredClone(ask))),
    stockNeeds: (ask, card) => done(work.needs(structuredClone({ ask, card }))),
    best: (supplies, occasions) => done(work.best(structuredClone({ supplies, occasions }))),
  };
}

async function sceneIn(file: string): Promise<Scene> {
  const text = await readFile(file, 'utf8');
  try {
    return JSON.parse(text) as Scene;
  } catch {
    throw new Refusal({
      kind: 'not-a-photo',
      field: 'photo',
      received: text.slice(0, 20),
      message: 'Expected a photo but received something else',
      mend: 'Send a JPEG.',
    });
  }
}

function readingOf(scene: Scene): PhotoOfSides & { picture: Uint8Array } {
  return {
    width: 4000,
    height: 3000,
    white: { kind: 'none', corners: null },
    chips: { tie: 'none', scraps: [] },
    notes: ['no white card'],
    picture: Buffer.from(`picture ${JSON.stringify(scene)}`),
    sides: scene.papers.map((lab, at): ReadSide => ({
      corners: cornersAt(at, scene.shift ?? 0),
      palette: {
        colours: [
          { lab, share: 0.7, role: 'ground', uncertainty: 1 },
          { lab: { ...lab, l: 90 }, share: 0.3, role: 'accent', uncertainty: 1 },
        ],
        tonal: false,
      },
      pattern: {
        repeat: 25.4,
        scale: 12.7,
        direction: 'none',
        up: 0,
        busyness: 0.3,
        descriptor: [],
      },
      confidence: 0.9,
      notes: [],
      swatch: Buffer.from(`swatch ${JSON.stringify([lab, at])}`),
    })),
  };
}

/** White and scraps are where they were shown; scraps are greys, as the pad knows them or of its own. */
function shownIn(tap: Tap, chipColours: readonly Lab[]): Pick<PhotoOfSides, 'white' | 'chips'> {
  const white = tap.white === undefined ? null : aroundOf(tap.white);
  const scraps = (tap.chips ?? []).map((spot, at) => ({
    corners: aroundOf(spot),
    lab: chipColours[at] ?? { l: 90 - 30 * at, a: 0, b: 0 },
  }));
  return {
    white: { kind: white === null ? 'none' : 'tapped', corners: white },
    chips: {
      tie: scraps.length === 0 ? 'none' : chipColours.length === 0 ? 'first' : 'tied',
      scraps,
    },
  };
}

/** As the real desk tells them: each known colour once, of what looks like it; on the bare table lie the scraps in their order. */
function scrapsAmong(
  scene: Scene,
  spots: readonly Spot[],
  known: readonly Lab[],
): PhotoOfSides['chips'] {
  const seen = spots.map((spot, at) => {
    const [p, , q] = aroundOf(spot);
    const [x, y] = [(p.x + q.x) / 2, (p.y + q.y) / 2];
    const on = scene.papers.find((_, index) => {
      const [a, , c] = cornersAt(index, 0);
      return x > a.x && x < c.x && y > a.y && y < c.y;
    });
    return { corners: aroundOf(spot), lab: on ?? known[at] };
  });
  const scraps = known.flatMap((wanted) => {
    const near = seen
      .filter(({ lab }) => lab !== undefined && labDistance(lab, wanted) < 30)
      .sort((p, q) => labDistance(p.lab!, wanted) - labDistance(q.lab!, wanted))[0];
    return near === undefined ? [] : [{ corners: near.corners, lab: wanted }];
  });
  return scraps.length < 3 ? { tie: 'none', scraps: [] } : { tie: 'tied', scraps };
}

function aroundOf(spot: Spot): Quad<'photo'> {
  if (!('x' in spot)) return spot;
  const { x, y } = spot;
  return [
    { x: x - 9, y: y - 9 },
    { x: x + 9, y: y - 9 },
    { x: x + 9, y: y + 9 },
    { x: x - 9, y: y + 9 },
  ];
}

function cornersAt(at: number, shift: number): Quad<'photo'> {
  const x = 200 + (at % 3) * 1200 + shift;
  const y = 200 + Math.floor(at / 3) * 1200 + shift / 2;
  return [
    { x, y },
    { x: x + 1000, y },
    { x: x + 1000, y: y + 1000 },
    { x, y: y + 1000 },
  ];
}
