/** Reads a photo by the steps of the service and lays what it found beside the truth. */
import type { SideTruth, PlainTruth } from '../../sample-swatches/render-photo.ts';
import { readColours } from '../../server/colour/read-palette.ts';
import { readSolid } from '../../server/colour/read-solid.ts';
import type { Solid } from '../../server/colour/read-solid.ts';
import { openPhoto } from '../../server/images/open-photo.ts';
import { groupPad } from '../../server/pad/group-pad.ts';
import type { Sheet, Side } from '../../server/pad/pad.ts';
import { pairByPlace } from '../../server/pad/pair-by-place.ts';
import { readPattern } from '../../server/pattern/read-pattern.ts';
import type { FlatSheet } from '../../server/photo/picture.ts';
import { readPhoto } from '../../server/photo/read-photo.ts';
import type { Case, Shot } from './photos-cases.ts';
import { matchQuads } from './photos-match.ts';
import type { Matched } from './photos-match.ts';

export interface ReadShot {
  readonly name: string;
  readonly truths: readonly SideTruth[];
  readonly sides: readonly Side[];
  readonly matched: readonly Matched<Side, SideTruth>[];
  readonly white: 'found' | 'tapped' | 'none';
}

export interface ReadPad {
  readonly name: string;
  readonly shots: readonly ReadShot[];
  /** For each sheet with both faces found: whether they were paired. */
  readonly pairings: readonly boolean[];
  readonly patternSets: readonly (readonly string[])[];
}

const SHEET = { width: 152.4, height: 152.4 };
const SEED = 1;
export const SAME_PLACE = 0.9;

export async function sidesIn(
  jpeg: Uint8Array,
  name: string,
): Promise<Pick<ReadShot, 'sides' | 'white'>> {
  const photo = await openPhoto(jpeg);
  const reading = readPhoto(photo, { look: 'sheets', sheetMillimetres: SHEET });
  const sides = reading.sheets.map((sheet, index) => readSide(sheet, `${name} ${index + 1}`));
  return { sides, white: reading.white.kind };
}

function readSide(sheet: FlatSheet, id: string): Side {
  const { palette, labels } = readColours(sheet.reading, sheet.error, SEED);
  const pattern = readPattern(sheet.reading, palette, sheet.millimetresPerPixel!, labels);
  const { corners, confidence, notes } = sheet;
  return { id, photo: id, corners, confidence, notes, palette, pattern };
}

async function readShot(shot: Shot): Promise<ReadShot> {
  const { sides, white } = await sidesIn(shot.jpeg, shot.name);
  const truths = shot.truth.sheets;
  return { name: shot.name, truths, sides, white, matched: matchQuads(sides, truths, SAME_PLACE) };
}

export async function readPadCase({ name, tables }: Case): Promise<ReadPad> {
  const shots: ReadShot[] = [];
  const sheets: Sheet[] = [];
  const pairings: boolean[] = [];
  for (const { fronts, backs } of tables) {
    const front = await readShot(fronts);
    const back = backs === null ? null : await readShot(backs);
    shots.push(front, ...(back === null ? [] : [back]));
    const pairs = pairByPlace(front.sides, back?.sides ?? []);
    const byId = new Map([...front.sides, ...(back?.sides ?? [])].map((side) => [side.id, side]));
    const side = (id: string | null): Side | null => (id === null ? null : (byId.get(id) ?? null));
    for (const pair of pairs)
      sheets.push({
        id: `sheet-${sheets.length}`,
        label: '',
        copies: 1,
        front: side(pair.front),
        back: side(pair.back),
      });
    for (const { found, truth } of front.matched) {
      const sheet = truth.side.replace('-front', '-back');
      const other = back?.matched.find((match) => match.truth.side === sheet)?.found;
      if (other !== undefined)
        pairings.push(pairs.some((pair) => pair.front === found.id && pair.back === other.id));
    }
  }
  return { name, shots, pairings, patternSets: groupPad(sheets).patternSets };
}

export interface ReadSupplies {
  readonly name: string;
  readonly truths: readonly PlainTruth[];
  readonly found: number;
  readonly matched: readonly Matched<
    Solid & { readonly corners: FlatSheet['corners'] },
    PlainTruth
  >[];
}

export async function readSupplyCase({ name, tables }: Case): Promise<ReadSupplies> {
  const { jpeg, truth } = tables[0]!.fronts;
  const photo = await openPhoto(jpeg);
  const reading = readPhoto(photo, { look: 'squares', sheetMillimetres: null });
  const found = reading.sheets.map((sheet) => ({
    corners: sheet.corners,
    ...readSolid(sheet.reading, sheet.error),
  }));
  const truths = [...truth.squares, ...truth.smears];
  // A smear has no edges of its own: any good part of it will do.
  const least = truth.smears.length > 0 ? 0.35 : SAME_PLACE;
  return { name, truths, found: found.length, matched: matchQuads(found, truths, least) };
}
