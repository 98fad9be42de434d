import type { NewPlan } from '../../server/contract/plans.ts';
import type { Row, SchemeTable } from './scheme-table.ts';

type Pin = NonNullable<NewPlan['pins']>[number];

/** The sheet that she wants cut into each of her slots; a slot that is not named is chosen for her. */
export type SheetChoices = Readonly<Record<string, string>>;

/** The choices with another sheet for a slot; '' leaves it to us. */
export function chosen(choices: SheetChoices, slot: string, sheet: string): SheetChoices {
  const others = Object.entries(choices).filter(([name]) => name !== slot);
  return Object.fromEntries(sheet === '' ? others : [...others, [slot, sheet]]);
}

/** What her pins say of the slots already. */
export function choicesOf(
  { homes }: SchemeTable,
  pins: readonly Pin[],
  sheetOf: (side: string) => string | undefined,
): SheetChoices {
  const said = pins.flatMap((pin): [string, string][] => {
    const slot = homes[keyOf(pin)];
    const sheet = sheetOfPin(pin, sheetOf);
    return slot === undefined || sheet === undefined ? [] : [[slot, sheet]];
  });
  return Object.fromEntries(said);
}

/**
 * Her pins with these choices: a slot gets its sheet by a pin on its first piece. Pins of hers that say the
 * same stay, those that say another sheet go; pins of cardstock are left alone.
 */
export function pinsWith(
  choices: SheetChoices,
  { slots, homes }: SchemeTable,
  rows: readonly Row[],
  pins: readonly Pin[],
  sheetOf: (side: string) => string | undefined,
): Pin[] {
  const kept = pins.filter((pin) => {
    const slot = homes[keyOf(pin)];
    const sheet = sheetOfPin(pin, sheetOf);
    return slot === undefined || sheet === undefined || choices[slot] === sheet;
  });
  const held = new Set(
    kept.flatMap((pin) => (sheetOfPin(pin, sheetOf) === undefined ? [] : [homes[keyOf(pin)]])),
  );
  const more = slots.flatMap((slot): Pin[] => {
    const sheet = choices[slot];
    const first = rows.find(({ key }) => homes[key] === slot);
    if (sheet === undefined || first === undefined || held.has(slot)) return [];
    return [{ card: first.card, layer: first.layer, sheet }];
  });
  return [...kept, ...more];
}

/** Her pins without those that her table made: on the plan a paper is kept by its side, here a slot by its sheet. */
export function pinsOfPlan(pins: readonly Pin[]): Pin[] {
  return pins.filter(({ sheet }) => sheet === undefined);
}

function sheetOfPin(
  { sheet, side }: Pin,
  sheetOf: (side: string) => string | undefined,
): string | undefined {
  return sheet ?? (side === undefined ? undefined : sheetOf(side));
}

function keyOf({ card, layer }: Pin): string {
  return `${card} ${layer}`;
}
