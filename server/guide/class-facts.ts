import { classSet } from '../cutting/class-set.ts';
import type { ClassStack } from '../cutting/class-set.ts';
import type { Sheet } from '../pad/pad.ts';
import { expected } from '../refusals/refusal.ts';
import type { GuideAsk } from './ask.ts';
import type { Facts } from './facts.ts';
import { counted, listed } from './said.ts';
import type { StockNeed } from './stock-needs.ts';

/** The same batch for several people: what it takes. */
export interface ClassFacts {
  readonly people: number;
  readonly sheets: number;
  /** Pads like this one. */
  readonly pads: number;
  readonly ofSheets: readonly { readonly sheet: Sheet; readonly needed: number }[];
  readonly stacks: readonly ClassStack[];
  readonly cardstock: readonly {
    readonly name: string;
    readonly pieces: number;
    readonly sheets: number | null;
  }[];
  readonly labels: number;
  readonly said: readonly string[];
}

/** Most patterned sheets under the blade at once (common practice, no source). */
const STACK = 3;

/** More labels than this are printed in several parts. */
const MOST_LABELS = 600;

/**
 * What the batch takes for all its people. Cardstock is counted person by person: cut for all at once it
 * may take a sheet fewer.
 */
export function classFacts(ask: GuideAsk, facts: Facts, needs: readonly StockNeed[]): ClassFacts {
  const people = ask.people ?? 1;
  checkLabels(people, facts.cards.length);
  const inOrder = { ...ask.scheme, slots: facts.slots.map(({ slot }) => slot) };
  const set = classSet(inOrder, people, ask.stack ?? STACK);
  const uses = new Map<Sheet, number>();
  for (const { sheet } of facts.slots) uses.set(sheet, (uses.get(sheet) ?? 0) + people);
  const ofSheets = [...uses].map(([sheet, needed]) => ({ sheet, needed }));
  const pads = Math.max(
    1,
    ...ofSheets.map(({ sheet, needed }) => Math.ceil(needed / sheet.copies)),
  );
  const cardstock = needs.map(({ stock, pieces, scheme }) => ({
    name: stock.name,
    pieces: people * pieces.length,
    sheets: scheme === null ? null : people * scheme.slots.length,
  }));
  const labels = people * facts.cards.length;
  const said = [
    `${counted(people, 'person', 'people')}, ${counted(facts.cards.length, 'card')} each: ${counted(labels, 'bag')} to fill and label.`,
    `${counted(set.sheets, 'patterned sheet')} in ${counted(set.stacks.length, 'stack')}: ${counted(pads, 'pad')} like ${ask.pad.name}.`,
    ...cardstock.map(
      ({ name, pieces, sheets }) =>
        `${name}: ${counted(pieces, 'piece')}${sheets === null ? '' : `, ${counted(sheets, 'sheet')}`}.`,
    ),
  ];
  const { sheets, stacks } = set;
  return { people, sheets, pads, ofSheets, stacks, cardstock, labels, said };
}

/** 'Stack 1: 3 of Sheet 2', 'Stack 2: 1 of Sheet 2 and 2 of Sheet 5'. */
export function stackSaid({ of }: ClassStack, facts: Facts, at: number): string {
  const labelOf = (id: string): string => facts.slots.find(({ slot }) => slot.id === id)!.name;
  return `Stack ${at + 1}: ${listed(of.map(({ slot, sheets }) => `${sheets} of ${labelOf(slot)}`))}`;
}

function checkLabels(people: number, cards: number): void {
  if (people * cards > MOST_LABELS)
    throw expected(
      `at most ${MOST_LABELS} cards in all`,
      'people',
      `${people} people with ${cards} cards each`,
      `Make the set for ${Math.floor(MOST_LABELS / cards)} people at a time.`,
      'too-large',
    );
}
