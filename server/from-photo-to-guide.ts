/**
 * The story, from photo to guide. Each step is a call or two into one folder; read it top to bottom.
 *
 * What else a plan could be goes on in other-plans.ts.
 * The service runs the steps one at a time, as she asks for them; tests/story.test.ts runs them all.
 */
import type { Lab } from './colour/lab.ts';
import { colourMapOf } from './colour/colour-map.ts';
import type { Palette } from './colour/palette.ts';
import { readColours } from './colour/read-palette.ts';
import { readSolid } from './colour/read-solid.ts';
import { cutScheme } from './cutting/cut-scheme.ts';
import type { CutSettings } from './cutting/cut-scheme.ts';
import { ownScheme } from './cutting/own-scheme.ts';
import { piecesOf } from './cutting/pieces-of.ts';
import type { BatchCard } from './cutting/pieces-of.ts';
import type { CuttingScheme } from './cutting/piece.ts';
import type { PhotoPoint, Quad } from './geometry/points.ts';
import type { GuideAsk } from './guide/ask.ts';
import { guidePages } from './guide/guide-pages.ts';
import { plannedCardPicture } from './guide/planned-card.ts';
import { encodeSwatch } from './images/encode-swatch.ts';
import { openPhoto } from './images/open-photo.ts';
import type { OpenedPhoto } from './images/open-photo.ts';
import type { Layout } from './layouts/layout.ts';
import { toMillimetres } from './lengths/length.ts';
import type { Size } from './lengths/length.ts';
import { groupPad } from './pad/group-pad.ts';
import type { Grouping, Sheet, Side } from './pad/pad.ts';
import { pairByPlace } from './pad/pair-by-place.ts';
import { readPattern } from './pattern/read-pattern.ts';
import type { PatternTraits } from './pattern/traits.ts';
import type { ChipsSeen, FlatSheet, Tap, WhiteReference } from './photo/picture.ts';
import { scaledQuad } from './photo/find-sheets.ts';
import { sameAs } from './photo/same-place.ts';
import { patchAround } from './photo/patch-around.ts';
import { readPhoto } from './photo/read-photo.ts';
import type { Before } from './plan/as-it-lies.ts';
import type { PlanAsk } from './plan/plan-cards.ts';
import type { FacesUp, Plan } from './plan/plan.ts';
import { planFreely } from './plan/free/plan-freely.ts';
import { layOut } from './plan/plan-desk.ts';
import type { Change, PlanDesk } from './plan/plan-desk.ts';
import { guidePdf } from './printing/guide-pdf.ts';
import type { PrintPaper } from './printing/guide-pdf.ts';

/** Everything random starts here, so that the same photo always gives the same answer. */
export const SEED = 1;

// ── 1  a photo of sheets becomes sides: where they lie, their swatch, palette and pattern ─────────

export interface ReadSide {
  readonly corners: Quad<'photo'>;
  readonly palette: Palette;
  readonly pattern: PatternTraits;
  readonly confidence: number;
  readonly notes: readonly string[];
  /** The swatch as a JPEG at about 150 dots an inch. */
  readonly swatch: Uint8Array;
}

export interface PhotoOfSides {
  readonly width: number;
  readonly height: number;
  readonly white: WhiteReference;
  readonly chips: ChipsSeen;
  readonly notes: readonly string[];
  /** In reading order of where the sheets lie. */
  readonly sides: readonly ReadSide[];
}

/** `chipColours`: what the scraps that tie a pad's photos together look like in the photo that came first. */
export async function readSides(
  bytes: Uint8Array,
  sheetSize: Size,
  tap: Tap = {},
  chipColours: readonly Lab[] = [],
): Promise<PhotoOfSides> {
  return readSidesIn(await openPhoto(bytes), sheetSize, tap, chipColours);
}

/** The same for a photo that is open already. */
export async function readSidesIn(
  photo: OpenedPhoto,
  sheetSize: Size,
  tap: Tap,
  chipColours: readonly Lab[],
): Promise<PhotoOfSides> {
  const sheetMillimetres = inMillimetres(sheetSize);
  const reading = readPhoto(photo, { look: 'sheets', sheetMillimetres, tap, chipColours });
  const sides = await Promise.all(reading.sheets.map(readSide));
  return {
    width: photo.width,
    height: photo.height,
    white: reading.white,
    chips: reading.chips,
    notes: reading.notes,
    sides,
  };
}

async function readSide(sheet: FlatSheet): Promise<ReadSide> {
  const { palette, labels } = readColours(sheet.reading, sheet.error, SEED);
  // The scale is known, because the size of the sheet was given.
  const pattern = readPattern(sheet.reading, palette, sheet.millimetresPerPixel!, labels);
  const swatch = await encodeSwatch(sheet.picture);
  const { corners, confidence, notes } = sheet;
  const where = colourMapOf(labels, palette.colours.length);
  return { corners, confidence, notes, palette: { ...palette, where }, pattern, swatch };
}

// ── 2  a photo of cardstock squares or ink smears becomes supplies ────────────────────────────────

export interface ReadSupply {
  readonly corners: Quad<'photo'>;
  readonly lab: Lab;
  readonly uncertainty: number;
  /** The light mirrors in so much of it that its colour cannot be told. */
  readonly glossy: boolean;
}

export interface PhotoOfSupplies {
  readonly width: number;
  readonly height: number;
  readonly white: WhiteReference;
  readonly chips: ChipsSeen;
  readonly notes: readonly string[];
  readonly supplies: readonly ReadSupply[];
}

/**
 * All that lie in the photo, or with `tap.corners` those that were read of it before, in that order. `chipColours`: what
 * the scraps that she touched look like in the photos of a pad, to which this one is tied by them.
 */
export async function readSupplies(
  bytes: Uint8Array,
  tap: Tap = {},
  chipColours: readonly Lab[] = [],
): Promise<PhotoOfSupplies> {
  return readSuppliesIn(await openPhoto(bytes), tap, chipColours);
}

/** The same for a photo that is open already. */
export function readSuppliesIn(
  photo: OpenedPhoto,
  { corners, ...tap }: Tap,
  chipColours: readonly Lab[] = [],
): PhotoOfSupplies {
  const ask = { look: 'squares', sheetMillimetres: null, tap, chipColours } as const;
  const reading = readPhoto(photo, ask);
  const found = reading.sheets.map(supplyOf);
  const { width, height } = photo;
  const { white, chips, notes } = reading;
  if (corners === undefined) return { width, height, white, chips, notes, supplies: found };
  // What she touched by hand was not found by itself, and is read where it was.
  const other = corners.filter((quad) => sameAs(quad, found) === null);
  const touched =
    other.length === 0
      ? []
      : readPhoto(photo, { ...ask, tap: { ...tap, corners: other } }).sheets.map(supplyOf);
  const supplies = corners.map((quad) => sameAs(quad, found) ?? touched[other.indexOf(quad)]!);
  return { width, height, white, chips, notes, supplies };
}

function supplyOf({ corners, reading, error }: FlatSheet): ReadSupply {
  const { lab, uncertainty, glossy } = readSolid(reading, error);
  return { corners, lab, uncertainty, glossy };
}

/** A place that she touched in a photo of any kind, and how that photo was read. */
export interface Touch {
  /** In pixels of the upright photo. */
  readonly at: PhotoPoint;
  readonly look: 'sheets' | 'squares';
  readonly tap: Tap;
  readonly chipColours: readonly Lab[];
}

/** What lies under a touch, in the light and against the white of its photo; null where nothing plain lies. */
export async function readTouched(bytes: Uint8Array, touch: Touch): Promise<ReadSupply | null> {
  const photo = await openPhoto(bytes);
  const { at, look, tap, chipColours } = touch;
  const patch = patchAround(photo.preview, { x: at.x / photo.scale, y: at.y / photo.scale });
  if (patch === null) return null;
  const corners = [scaledQuad(patch.corners, photo.scale)];
  const ask = { look, sheetMillimetres: null, tap: { ...tap, corners }, chipColours };
  const [flat] = readPhoto(photo, ask).sheets;
  if (flat === undefined) return null;
  return supplyOf(flat);
}

// ── 3  fronts and backs become sheets, sheets become a pad with its story ─────────────────────────

/** Sheets of one arrangement on the table: fronts and backs lie in the same places. */
export function sheetsOf(fronts: readonly Side[], backs: readonly Side[]): Sheet[] {
  const byId = new Map([...fronts, ...backs].map((side) => [side.id, side]));
  const side = (id: string | null): Side | null => (id === null ? null : (byId.get(id) ?? null));
  return pairByPlace(fronts, backs).map((pair, index) => ({
    id: `sheet-${index + 1}`,
    label: `Sheet ${index + 1}`,
    copies: 1,
    front: side(pair.front),
    back: side(pair.back),
  }));
}

export function groupSheets(sheets: readonly Sheet[]): Grouping {
  return groupPad(sheets);
}

// ── 4  layouts and counts become pieces, pieces become slots, slots get their sheets ──────────────

export interface Wish {
  readonly layout: Layout;
  readonly count: number;
}

export interface PlannedBatch {
  readonly cards: readonly BatchCard[];
  readonly scheme: CuttingScheme;
  readonly plan: Plan;
}

export type PlanWishes = Omit<PlanAsk, 'cards' | 'scheme' | 'seed'>;

export function planBatch(
  wishes: readonly Wish[],
  ask: PlanWishes,
  settings: CutSettings,
): PlannedBatch {
  return layBatch(wishes, ask, settings).batch;
}

/** A planned batch on the table: with other pins it is planned again on what is worked out already. */
export interface LaidBatch {
  readonly batch: PlannedBatch;
  again(change: Change): LaidBatch;
  /** The batch as it lay before, where that changes fewer cards and costs next to nothing. */
  asItLies(before: Before): PlannedBatch;
  /** The same on cuts that were moved for it; null where that is dear. */
  inPlace(before: Before, cards: readonly number[]): PlannedBatch | null;
}

/** On these cuts and with these faces up, where a batch lies so already. */
export interface CutSo {
  readonly scheme: CuttingScheme;
  readonly up?: FacesUp;
}

export function layBatch(
  wishes: readonly Wish[],
  ask: PlanWishes,
  settings: CutSettings,
  so?: CutSo,
): LaidBatch {
  const cards = numbered(wishes);
  if (so !== undefined) return laid(cards, so.scheme, layOut({ ...ask, ...so, cards, seed: SEED }));
  const { patterned } = piecesOf(cards);
  const { sheetSize, sheets } = ask.pad;
  // Two triangles of one rectangle show one side of it, so every sheet has to have the side that lies up.
  const pairAcross = sheets.every(({ front, back }) => front !== null && back !== null);
  const cut = { ...settings, pairAcross };
  const scheme =
    settings.table === undefined
      ? cutScheme(patterned, sheetSize, cut)
      : ownScheme(patterned, settings.table, sheetSize, cut);
  return laid(cards, scheme, layOut({ ...ask, cards, scheme, seed: SEED }));
}

function laid(cards: readonly BatchCard[], scheme: CuttingScheme, desk: PlanDesk): LaidBatch {
  return {
    batch: { cards, scheme, plan: desk.plan },
    again: (change) => laid(cards, change.scheme ?? scheme, desk.change(change)),
    asItLies: (before) => ({ cards, scheme, plan: desk.asItLies(before) }),
    inPlace: (before, moved) => {
      const plan = desk.inPlace(before, moved);
      return plan && { cards, scheme, plan };
    },
  };
}

/** The batch with any piece from any sheet, on up to so many sheets. */
export function planFreeBatch(
  wishes: readonly Wish[],
  ask: PlanWishes,
  settings: CutSettings,
  sheets: number,
): PlannedBatch {
  const cards = numbered(wishes);
  return { cards, ...planFreely({ ...ask, cards, settings, sheets, seed: SEED }) };
}

// ── 5  a plan becomes pictures of the cards, and the guide to cut from ────────────────────────────

export function drawCard(ask: GuideAsk, number: number): string {
  return plannedCardPicture(ask, number);
}

/** Pictures by the address that `ask.picture` gives to a side. */
export function printGuide(
  ask: GuideAsk,
  pictures: ReadonlyMap<string, Uint8Array>,
  paper: PrintPaper,
  made?: Date,
): Promise<Uint8Array> {
  return guidePdf(guidePages(ask), pictures, paper, made, `${ask.pad.name}, ${ask.title}`);
}

function numbered(wishes: readonly Wish[]): BatchCard[] {
  return wishes
    .flatMap((wish) => Array.from({ length: wish.count }, () => wish.layout))
    .map((layout, index) => ({ number: index + 1, layout }));
}

function inMillimetres(size: Size): { width: number; height: number } {
  return { width: toMillimetres(size.width), height: toMillimetres(size.height) };
}
