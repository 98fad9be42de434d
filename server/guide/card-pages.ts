import { fewestPages, setDown } from './fewest-pages.ts';
import type { EndList, OnPage, Way } from './fewest-pages.ts';
import type { GuideAsk } from './ask.ts';
import { cardWays } from './card-block.ts';
import type { Facts } from './facts.ts';
import { BODY } from './page.ts';
import type { GuidePage } from './page.ts';
import { capital, cardsSaid, listed } from './said.ts';

const PLACE = { top: BODY.top - 4.5, bottom: BODY.bottom + 7 } as const;
const ROOM = PLACE.bottom - PLACE.top;
const GAP = 3;

/**
 * Every card with its picture, why it is so, and its layers in the order of gluing; two a page where they fit, and with
 * a larger picture where there is room for it.
 */
export function cardPages(ask: GuideAsk, facts: Facts): GuidePage[] {
  return pagesOf(partsOf(ask, facts));
}

/** The same, with a list at the end of the last page; null where that takes a page more. */
export function cardPagesWith(
  ask: GuideAsk,
  facts: Facts,
  { name, block }: EndList,
): GuidePage[] | null {
  const cards = partsOf(ask, facts);
  const way: Way = { height: block.height, worth: 0, draw: () => block.marks };
  const all = [...cards, { name, number: null, ways: [way] }];
  return setOn(all).length > setOn(cards).length ? null : pagesOf(all);
}

/** What stands on the pages: a card, or a part of one, by its number; a list by its name. */
interface Part {
  readonly name: string;
  readonly number: number | null;
  readonly ways: readonly Way[];
}

function partsOf(ask: GuideAsk, facts: Facts): Part[] {
  return facts.cards.flatMap((card) =>
    cardWays(ask, card, ROOM).map((ways) => ({ name: '', number: card.number, ways })),
  );
}

function setOn(parts: readonly Part[]): OnPage[][] {
  return fewestPages(
    parts.map(({ ways }) => ways),
    ROOM,
    GAP,
  );
}

function pagesOf(parts: readonly Part[]): GuidePage[] {
  return setOn(parts).map((page) => {
    const here = page.map(({ at }) => parts[at]!);
    const cards = new Set(here.flatMap(({ number }) => number ?? []));
    const names = [
      ...(cards.size > 0 ? [cardsSaid([...cards])] : []),
      ...here.filter(({ number }) => number === null).map(({ name }) => name),
    ];
    return { name: capital(listed(names)), marks: setDown(page, PLACE.top, ROOM, GAP) };
  });
}
