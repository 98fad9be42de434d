import type { JudgedLink } from './card-score.ts';
import { GOES_WELL } from './coordination/goes-well.ts';
import type { Layer } from '../layouts/layout.ts';
import { contrast } from './coordination/contrast.ts';
import { isLost, sentence } from './coordination/statements.ts';
import type { Statement } from './coordination/statements.ts';
import { words } from './coordination/words.ts';
import { statementsOn, WEAK, weightiest } from './reasons.ts';
import type { Chosen } from './reasons.ts';

/** Why a card is as it is: up to three sentences, and one that is short enough to stand under its picture. */
export interface Why {
  readonly why: string;
  readonly short: string;
}

/**
 * What ties its papers together, then what the cardstock does, and the weak spot of the card, if it has one: last
 * where the card goes well all the same, else first.
 */
export function whyOf(card: Chosen, score: number, label: (side: string) => string): Why {
  const called = (layer: Layer): string => {
    const { side, look } = card.shown(layer);
    return side === null ? `the ${words(look.ground.lab)} ${layer.role}` : label(side);
  };
  const about = (judged: JudgedLink): Statement =>
    weightiest(statementsOn(card, judged, called), judged.worth);
  const papers = heaviest(card.judged.filter((judged) => kindOf(card, judged) === 2));
  const stock = heaviest(card.judged.filter((judged) => kindOf(card, judged) === 1));
  const weak = weakest(card.judged);
  const flaw = weak === undefined ? [] : [about(weak)];
  const merits = [
    ...(papers === undefined || papers === weak ? [] : [about(papers)]),
    ...(stock === undefined || stock === weak
      ? []
      : [stockDoes(about(stock), called, stock, card)]),
  ];
  const goodFirst = [...merits, ...flaw].sort((a, b) => Number(b.good) - Number(a.good));
  const said = score >= GOES_WELL ? goodFirst : [...flaw, ...merits];
  const first = said[0];
  if (first === undefined) {
    const plain = 'A plain card with nothing to match.';
    return { why: plain, short: plain };
  }
  return { why: said.map(({ text }) => sentence(text)).join(' '), short: sentence(first.short) };
}

/** How many of two layers are patterned papers. */
function kindOf({ shown }: Chosen, { link }: JudgedLink): number {
  return [link.a, link.b].filter((layer) => shown(layer).side !== null).length;
}

/** Where the cardstock shares no colour with its paper, it sets it off by being another that is well told from it. */
function stockDoes(
  said: Statement,
  called: (layer: Layer) => string,
  { link }: JudgedLink,
  { shown }: Chosen,
): Statement {
  if (said.good || shown(link.a).lying || shown(link.b).lying) return said;
  const [one, other] = [shown(link.a).look, shown(link.b).look];
  if (link.touching && isLost(one, other, contrast(one, other))) return said;
  const [stock, paper] = shown(link.a).side === null ? [link.a, link.b] : [link.b, link.a];
  const text = `${called(stock)} sets ${called(paper)} off.`;
  return { good: true, much: 0, text, short: text };
}

function heaviest(judged: readonly JudgedLink[]): JudgedLink | undefined {
  return judged.reduce<JudgedLink | undefined>(
    (best, one) =>
      best === undefined || one.link.weight * one.worth > best.link.weight * best.worth
        ? one
        : best,
    undefined,
  );
}

/** The border that costs the card most, when it is a weak one. */
function weakest(judged: readonly JudgedLink[]): JudgedLink | undefined {
  return judged
    .filter(({ worth }) => worth < WEAK)
    .reduce<JudgedLink | undefined>(
      (worst, one) => (worst === undefined || lossOf(one) > lossOf(worst) ? one : worst),
      undefined,
    );
}

function lossOf({ link, worth }: JudgedLink): number {
  return link.weight * (1 - worth);
}
