import type { Piece } from '../../server/cutting/piece.ts';
import { seeded } from '../../server/cutting/seeded.ts';
import type { CutSettings } from '../../server/cutting/settings.ts';
import { INCH, units } from '../../server/lengths/length.ts';
import type { Size } from '../../server/lengths/length.ts';

type Part = readonly [number, number];

/** 1/4 in. */
const STEP = INCH / 4;

/** A square sheet cut apart by chance, edge to edge, into so many parts that fill it. */
export function wholeSheet(count: number, side: number, random: () => number): Part[] {
  const parts: Part[] = [[side, side]];
  while (parts.length < count) {
    parts.sort((a, b) => b[0] * b[1] - a[0] * a[1]);
    const [width, height] = parts.splice(Math.floor(random() * Math.min(2, parts.length)), 1)[0]!;
    const vertical = random() < width / (width + height);
    const long = vertical ? width : height;
    const at = Math.max(1, Math.min(long - 1, Math.round(long * (0.25 + 0.5 * random()))));
    if (vertical) parts.push([at, height], [width - at, height]);
    else parts.push([width, at], [width, height - at]);
  }
  return parts;
}

/** Pieces that come out of six 6 x 6 in sheets by construction, trimmed by 1/4 in here and there down to a use. */
export function sixSheets(count: number, use: number, seed: number): Piece[] {
  const random = seeded(seed);
  const parts = Array.from({ length: 6 }, (_, sheet) => Math.floor((count + sheet) / 6)).flatMap(
    (own) =>
      wholeSheet(own, 24, random).map(([width, height]): [number, number] => [width, height]),
  );
  const goal = use * 6 * 24 * 24;
  let area = 6 * 24 * 24;
  while (area > goal) {
    const part = parts[Math.floor(random() * parts.length)]!;
    const side = random() < 0.5 ? 0 : 1;
    if (part[side] <= 2) continue;
    part[side]--;
    area -= part[1 - side]!;
  }
  return parts.map((part, index) => pieceOf(index, part, index + 1, 'paper', index % 2 === 0));
}

export interface Batch {
  readonly pieces: readonly Piece[];
  readonly sheet: Size;
  readonly settings: CutSettings;
}

/**
 * A batch by chance: up to fourteen pieces on a sheet of its own size, some with an up. Two pieces of
 * a card share a paper only when both are at most half as wide and high as the sheet.
 */
export function randomBatch(seed: number): Batch {
  const random = seeded(seed);
  const upTo = (most: number): number => 1 + Math.floor(random() * most);
  const [across, down] = [10 + upTo(22), 10 + upTo(22)];
  const sharers = new Map<string, number>();
  const pieces = Array.from({ length: upTo(14) }, (_, index) => {
    const card = upTo(5);
    const part: Part = [upTo(Math.floor(across * 0.6)), upTo(Math.floor(down * 0.6))];
    const small = 2 * part[0] <= across && 2 * part[1] <= down;
    const key = `${card} ${upTo(3)}`;
    const before = sharers.get(key) ?? 0;
    if (small) sharers.set(key, before + 1);
    const paper = small && before < 2 ? key : `${key} ${index}`;
    return pieceOf(index, part, card, paper, random() < 0.3);
  });
  const sheet = { width: units(across * STEP), height: units(down * STEP) };
  const settings = {
    ruler: 'in',
    keepUp: random() < 0.2,
    apart: random() < 0.5,
    seed,
    steps: 4,
  } as const;
  return { pieces, sheet, settings };
}

function pieceOf(
  index: number,
  [width, height]: Part,
  card: number,
  paper: string,
  keepUp: boolean,
): Piece {
  return {
    id: `piece-${index + 1}`,
    card,
    layer: `layer-${index + 1}`,
    role: 'panel',
    size: { width: units(width * STEP), height: units(height * STEP) },
    shape: { kind: 'rectangle' },
    paper,
    keepUp,
  };
}
