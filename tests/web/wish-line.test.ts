import { describe, expect, it } from 'vitest';
import type { Pin, Plan } from '../../server/contract/plans.ts';
import { WishLine, type Wished } from '../../web/plan/wish-line.ts';
import { asChange } from '../../web/plan/wishes.ts';

const planOf = (id: string): Plan => ({ id }) as Plan;

interface Named extends Wished {
  readonly name: string;
}

/** A table on which plans are made when the test says so. */
function laid() {
  const told: string[] = [];
  let shown = planOf('first');
  let waiting: readonly Named[] = [];
  const open = new Map<string, { done: () => void; fail: () => void }>();
  const line = new WishLine<Named>({
    shown: () => shown,
    waiting: (now) => (waiting = now),
    refused: (fault) => told.push(`refused: ${(fault as Error).message}`),
    arrived: (made, from) => {
      told.push(`${made.id} after ${from.id}`);
      shown = made;
    },
  });
  const wish = (name: string): void => {
    line.wish({
      name,
      make: () =>
        new Promise((resolve, reject) =>
          open.set(name, {
            done: () => resolve(planOf(name)),
            fail: () => reject(new Error(name)),
          }),
        ),
    });
  };
  const settled = (): Promise<void> => new Promise((resolve) => setTimeout(resolve, 0));
  const end = async (name: string, how: 'done' | 'fail' = 'done'): Promise<void> => {
    open.get(name)![how]();
    open.delete(name);
    await settled();
  };
  return {
    line,
    wish,
    end,
    told,
    show: (id: string) => (shown = planOf(id)),
    underway: () => [...open.keys()],
    names: () => waiting.map(({ name }) => name),
  };
}

describe('wishes in line', () => {
  it('are planned one after the other, each from the plan of the one before', async () => {
    const { wish, end, told, underway, names } = laid();
    wish('one');
    wish('two');
    expect(underway()).toEqual(['one']);
    expect(names()).toEqual(['one', 'two']);
    await end('one');
    expect(underway()).toEqual(['two']);
    await end('two');
    expect(told).toEqual(['one after first', 'two after one']);
    expect(names()).toEqual([]);
  });

  it('taken back while under way do not show what they made', async () => {
    const { line, wish, end, told, names } = laid();
    wish('one');
    expect(line.takeBack()).toBe(true);
    expect(names()).toEqual([]);
    expect(line.takeBack()).toBe(false);
    wish('two');
    await end('one');
    await end('two');
    expect(told).toEqual(['two after first']);
  });

  it('begin from the plan that she has gone to meanwhile', async () => {
    const { line, wish, end, told, show } = laid();
    wish('one');
    line.clear();
    show('older');
    wish('two');
    await end('one');
    await end('two');
    expect(told).toEqual(['two after older']);
  });

  it('do not stop at one that cannot be met', async () => {
    const { wish, end, told, names } = laid();
    wish('one');
    wish('two');
    await end('one', 'fail');
    await end('two');
    expect(told).toEqual(['refused: one', 'two after first']);
    expect(names()).toEqual([]);
  });
});

describe('a wish as a change', () => {
  const pin = (card: number, side: string): Pin => ({ card, layer: 'mat', side });

  it('puts in and takes out its own pins only, and leaves those of other wishes', () => {
    const seen = { cards: [], pins: [pin(1, 'a'), pin(2, 'b')] };
    const change = asChange(seen, { pins: [pin(1, 'a'), pin(3, 'c')] });
    expect(change(seen).pins).toEqual([pin(1, 'a'), pin(3, 'c')]);
    // The pin of card 1 was part of a wish that could not be met.
    expect(change({ cards: [], pins: [pin(2, 'b'), pin(4, 'd')] }).pins).toEqual([
      pin(4, 'd'),
      pin(3, 'c'),
    ]);
  });

  it('takes the place of an older pin of the same layer', () => {
    const seen = { cards: [], pins: [pin(1, 'a')] };
    const change = asChange(seen, { pins: [pin(1, 'z')] });
    expect(change({ cards: [], pins: [pin(1, 'y')] }).pins).toEqual([pin(1, 'z')]);
  });

  it('leaves pins alone when it is about something else', () => {
    const taste = { contrast: 0, busy: 1, bold: 0 };
    const wishes = { cards: [], pins: [pin(1, 'a')] };
    expect(asChange({ cards: [] }, { taste })(wishes)).toEqual({ ...wishes, taste });
  });
});
