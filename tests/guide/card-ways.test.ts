import { describe, expect, test } from 'vitest';
import { cardWays } from '../../server/guide/card-block.ts';
import { factsOf } from '../../server/guide/facts.ts';
import { guidePages } from '../../server/guide/guide-pages.ts';
import { PAGE } from '../../server/guide/page.ts';
import { cornersOf, flat, textOf } from './flat.ts';
import { guideWorld, layoutsOf } from './world.ts';

const ROOM = 230.5;
const world = guideWorld(layoutsOf('us').slice(0, 3));

/** The first card with its layers so many times over, as in a layout of her own. */
function longCard(times: number) {
  const card = factsOf(world).cards[0]!;
  return { ...card, layers: Array.from({ length: times }, () => card.layers).flat() };
}

describe('a card in the guide', () => {
  test('is drawn larger where a page has room for it', () => {
    for (const card of factsOf(world).cards) {
      const [ways] = cardWays(world, card, ROOM);
      const worths = ways!.map(({ worth }) => worth);
      expect(worths).toHaveLength(3);
      expect(worths).toEqual(worths.toSorted((a, b) => b - a));
      for (const { draw, height } of ways!)
        for (const mark of flat(draw()).filter(({ clip }) => clip === null))
          for (const { x, y } of cornersOf(mark)) {
            expect(x).toBeLessThanOrEqual(PAGE.width + 0.6);
            expect(y).toBeLessThanOrEqual(height + 0.6);
          }
    }
  });

  test('with more layers than a page has room for goes on in parts, each of which fits, and no layer is lost', () => {
    for (const times of [6, 8, 16]) {
      const card = longCard(times);
      const parts = cardWays(world, card, ROOM);
      expect(parts.length).toBeGreaterThan(1);
      const texts = parts.flatMap(([way]) => textOf(way!.draw()));
      for (const [way] of parts) expect(way!.height).toBeLessThanOrEqual(ROOM);
      card.layers.forEach((_, at) => expect(texts).toContain(String(at + 1)));
      expect(texts.filter((text) => text === 'Card 1, continued')).toHaveLength(parts.length - 1);
    }
  });

  test('the words of a mat say nothing of pieces that are cut already', () => {
    const text = guidePages(guideWorld(layoutsOf('us')))
      .flatMap(({ marks }) => textOf(marks))
      .join(' ');
    expect(text).not.toContain('hidden middle');
    expect(text).not.toContain('(to buy)');
  });
});
