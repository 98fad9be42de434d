import { Refusal } from '../../refusals/refusal.ts';
import type { FreeWorld } from './free-world.ts';

/** Says that the cards do not come out of so many sheets, how many they take at least, and which cards to take off. */
export function tooFew({ ask, most, room, copies }: FreeWorld): Refusal {
  const needs = new Map<number, number>();
  for (const { card, area } of room.lots) needs.set(card, (needs.get(card) ?? 0) + area);
  const whole = [...needs.values()].reduce((sum, area) => sum + area, 0);
  const least = Math.max(most + 1, Math.ceil(whole - 1e-9));
  const there = copies.reduce((sum, count) => sum + count, 0);
  const widest = [...needs].sort(([, a], [, b]) => b - a);
  let off = 0;
  for (let left = whole; off < widest.length && left > most; off++) left -= widest[off]![1];
  const dear = ask.cards.find(({ number }) => number === widest[0]?.[0])?.layout.name ?? '';
  const more =
    there >= least
      ? `Allow ${least} sheets or more`
      : `Photograph more sheets (the pad has ${there}, and these cards take ${least} at least)`;
  return new Refusal({
    kind: 'does-not-fit',
    field: 'sheets',
    received: most,
    message: `These cards do not come out of ${most === 1 ? '1 sheet' : `${most} sheets`}; by their area alone they take ${Math.ceil(whole - 1e-9)}.`,
    mend: `${more}, or make fewer cards: ${Math.max(1, off)} at least, those of '${dear}' take most paper.`,
  });
}
