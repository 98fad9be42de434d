import type { NewPlan } from '../../server/contract/plans.ts';
import type { CutPiece, SlotCuts } from '../../server/contract/plan-guides.ts';
import type { LayoutListing } from '../../server/contract/layouts.ts';
import { millimetres } from '../lengths/lengths.ts';

export type Scheme = NonNullable<NewPlan['scheme']>;

/** Which sheet gives which piece: the sheets in order, and the sheet of each piece. */
export interface SchemeTable {
  readonly slots: readonly string[];
  readonly homes: Readonly<Record<string, string>>;
}

/** A piece with the paper that it must share with others of its card. */
export interface Row extends CutPiece {
  readonly key: string;
  readonly paper: string;
}

/** The pieces of a plan by card, from the lowest layer up. */
export function rowsOf(
  slots: readonly SlotCuts[],
  layoutOf: (card: number) => LayoutListing | undefined,
): Row[] {
  return slots
    .flatMap(({ pieces }) => pieces)
    .map((piece) => {
      const layers = layoutOf(piece.card)?.layers ?? [];
      const at = layers.findIndex(({ id }) => id === piece.layer);
      return { ...piece, key: keyOf(piece), paper: layers[at]?.paper ?? piece.layer, at };
    })
    .sort((a, b) => a.card - b.card || a.at - b.at);
}

/** The table as the plan has it now. */
export function tableOf(slots: readonly SlotCuts[]): SchemeTable {
  const homes = slots.flatMap(({ slot, pieces }) =>
    pieces.map((piece): [string, string] => [keyOf(piece), slot]),
  );
  return { slots: slots.map(({ slot }) => slot), homes: Object.fromEntries(homes) };
}

/** A piece put on another sheet; pieces of its card from the same paper go with it. */
export function moved(
  table: SchemeTable,
  rows: readonly Row[],
  row: Row,
  slot: string | null,
): SchemeTable {
  const to = slot ?? freshName(table.slots);
  const fellows = rows.filter(({ card, paper }) => card === row.card && paper === row.paper);
  const homes = { ...table.homes, ...Object.fromEntries(fellows.map(({ key }) => [key, to])) };
  const slots = slot === null ? [...table.slots, to] : table.slots;
  return { slots, homes };
}

/** The table as it is sent: sheets that give nothing are left out. */
export function schemeOf({ slots, homes }: SchemeTable, rows: readonly Row[]): Scheme {
  return slots
    .map((slot) => ({
      slot,
      pieces: rows
        .filter(({ key }) => homes[key] === slot)
        .map(({ card, layer }) => ({ card, layer })),
    }))
    .filter(({ pieces }) => pieces.length > 0);
}

/** How much of a sheet its pieces take by area, triangles as half their rectangle; above 1 it cannot be. */
export function fullness(
  slot: string,
  { homes }: SchemeTable,
  rows: readonly Row[],
  sheet: { readonly width: string; readonly height: string },
): number {
  const whole = (millimetres(sheet.width) ?? 0) * (millimetres(sheet.height) ?? 0);
  const taken = rows
    .filter(({ key }) => homes[key] === slot)
    .reduce((sum, { size, half }) => sum + areaOf(size) / (half ? 2 : 1), 0);
  return whole === 0 ? 0 : taken / whole;
}

/** The piece that a refusal speaks of, as `scheme[2].pieces[1]` names it; null when it speaks of none. */
export function refusedKey(field: string | undefined, scheme: Scheme): string | null {
  const [, slot, piece] = /^scheme\[(\d+)\]\.pieces\[(\d+)\]/.exec(field ?? '') ?? [];
  const found = scheme[Number(slot)]?.pieces[Number(piece)];
  return found === undefined ? null : keyOf(found);
}

function keyOf({ card, layer }: { readonly card: number; readonly layer: string }): string {
  return `${card} ${layer}`;
}

function freshName(slots: readonly string[]): string {
  let count = 1;
  while (slots.includes(`own-${count}`)) count += 1;
  return `own-${count}`;
}

/** `4 x 5 1/4 in` as square millimetres. */
function areaOf(size: string): number {
  const unit = size.endsWith('mm') ? 'mm' : 'in';
  const [width, height] = size.split(' x ').map((text) => millimetres(text, unit) ?? 0);
  return (width ?? 0) * (height ?? 0);
}
