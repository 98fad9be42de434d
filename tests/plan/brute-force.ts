import { linkWorth } from '../../server/plan/card-score.ts';
import type { Shown } from '../../server/plan/card-score.ts';
import type { PlanAsk } from '../../server/plan/ask.ts';
import { readable } from '../../server/plan/coordination/greeting.ts';
import type { Look } from '../../server/plan/coordination/look.ts';
import { pairScore } from '../../server/plan/coordination/pair-score.ts';
import { instanceOf } from '../../server/plan/instance.ts';
import type { Instance } from '../../server/plan/instance.ts';

/**
 * The value of the best plan, by trying every sheet in every slot, every side of every piece and every
 * cardstock of every layer: only for worlds with a handful of sheets.
 */
export function bestByTryingAll(ask: PlanAsk): number {
  const instance = instanceOf(ask);
  const left = instance.designs.map(({ sheet }) => sheet.copies);
  const chosen: number[] = [];
  const cards = instance.cards.map((_, at) => cardByTryingAll(instance, at));
  let best = -Infinity;
  const fill = (slot: number): void => {
    if (slot === ask.scheme.slots.length) {
      best = Math.max(
        best,
        cards.reduce((sum, card) => sum + card(chosen), 0),
      );
      return;
    }
    for (const design of instance.network.allowed[slot]!) {
      if (left[design] === 0) continue;
      left[design]!--;
      chosen.push(design);
      fill(slot + 1);
      chosen.pop();
      left[design]!++;
    }
  };
  fill(0);
  return best;
}

/** The best score of one card for given designs, each worked out once. */
function cardByTryingAll(instance: Instance, at: number): (designs: readonly number[]) => number {
  const { model } = instance.cards[at]!;
  const { parts, links } = model;
  const { book, ask } = instance;
  const pairs = [new Map<Look, Map<Look, number>>(), new Map<Look, Map<Look, number>>()] as const;
  const pair = (a: Look, b: Look, touching: boolean): number => {
    const rows = pairs[touching ? 1 : 0];
    const row = rows.get(a) ?? new Map<Look, number>();
    rows.set(a, row);
    const score = row.get(b) ?? pairScore(a, b, book.table, ask.taste, touching);
    row.set(b, score);
    return score;
  };
  const shown = new Map<string, Shown[]>();
  const partOf = new Map<string, number>();
  parts.forEach((part, number) =>
    part.layers.forEach((layer) => {
      partOf.set(layer.id, number);
      shown.set(
        layer.id,
        part.options.map((option) => book.shown(option, layer, part.pieces)),
      );
    }),
  );
  const known = new Map<string, number>();
  const best = (designs: readonly number[]): number => {
    const chosen: number[] = [];
    let most = -Infinity;
    const shows = (layer: string): Shown => shown.get(layer)![chosen[partOf.get(layer)!]!]!;
    const choose = (number: number): void => {
      if (number === parts.length) {
        let sum = 0;
        for (const { a, b, weight, touching } of links.links) {
          const [one, other] = [shows(a.id), shows(b.id)];
          sum += weight * linkWorth(one, other, pair(one.look, other.look, touching));
        }
        for (const { layer, weight } of links.greetings)
          sum += weight * readable(shows(layer.id).look);
        most = Math.max(most, sum / links.total);
        return;
      }
      const part = parts[number]!;
      part.options.forEach((option, place) => {
        if (option.kind === 'paper' && option.design !== designs[part.slot!]) return;
        chosen.push(place);
        choose(number + 1);
        chosen.pop();
      });
    };
    choose(0);
    return most;
  };
  return (designs) => {
    const key = parts.map((part) => (part.slot === null ? '' : designs[part.slot])).join(' ');
    const value = known.get(key) ?? best(designs);
    known.set(key, value);
    return value;
  };
}
