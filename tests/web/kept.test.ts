import { effect } from '@preact/signals';
import { afterEach, beforeEach, describe, expect, it, vi } from 'vitest';
import { Refused } from '../../web/wire/ask.ts';
import { shelfOf, type Around, type Kept, type Shelf } from '../../web/wire/kept.ts';

/** Of a browser: whether the page is seen, and that she or the network came back. */
let seen = true;
const back = new Set<() => void>();
const comeBack = (): void => back.forEach((act) => act());
const around: Around = { isSeen: () => seen, onComingBack: (act) => back.add(act) };

beforeEach(() => {
  seen = true;
  back.clear();
  vi.useFakeTimers();
});

afterEach(() => void vi.useRealTimers());

/** A service whose answers the test gives, question by question. */
function asked() {
  const open: {
    answer: (value: unknown) => Promise<void>;
    lose: (status?: number) => Promise<void>;
  }[] = [];
  const read = (): Promise<string> =>
    new Promise((resolve, reject) => {
      open.push({
        answer: (value) => {
          resolve(value as string);
          return vi.advanceTimersByTimeAsync(0).then(() => undefined);
        },
        lose: (status = 0) => {
          reject(new Refused({ type: 'about:blank', title: '', status, detail: `${status}` }));
          return vi.advanceTimersByTimeAsync(0).then(() => undefined);
        },
      });
    });
  return { open, read };
}

function looked(shelf: Shelf<string>): { now: () => Kept<string>; away: () => void } {
  let now: Kept<string> | null = null;
  const away = effect(() => {
    now = shelf.at('key').value;
  });
  return { now: () => now!, away };
}

describe('a value that is looked at', () => {
  it('is asked for again by itself when its answer was lost, after longer and longer waits', async () => {
    const { open, read } = asked();
    const { now } = looked(shelfOf(read, around));
    expect(open).toHaveLength(1);
    for (const [tries, wait] of [500, 1000, 2000, 4000, 8000, 8000].entries()) {
      await open[tries]!.lose(tries % 2 ? 503 : 0);
      await vi.advanceTimersByTimeAsync(wait - 1);
      expect(open).toHaveLength(tries + 1);
      await vi.advanceTimersByTimeAsync(1);
      expect(open).toHaveLength(tries + 2);
    }
    await open[6]!.answer('here');
    expect(now()).toEqual({ value: 'here', problem: null, waiting: false });
    await vi.advanceTimersByTimeAsync(60_000);
    expect(open).toHaveLength(7);
  });

  it('is told as lost only when it stays so, and at once when it was refused', async () => {
    const { open, read } = asked();
    const { now } = looked(shelfOf(read, around));
    await open[0]!.lose();
    expect(now()).toEqual({ value: null, problem: null, waiting: true });
    await vi.advanceTimersByTimeAsync(500);
    await open[1]!.lose();
    await vi.advanceTimersByTimeAsync(1000);
    await open[2]!.lose();
    expect(now().problem?.status).toBe(0);
    const refused = asked();
    const other = looked(shelfOf(refused.read, around));
    await refused.open[0]!.lose(404);
    expect(other.now()).toMatchObject({ problem: { status: 404 }, waiting: false });
    await vi.advanceTimersByTimeAsync(60_000);
    expect(refused.open).toHaveLength(1);
  });

  it('is asked for when she or the network comes back, and not while nobody looks', async () => {
    const { open, read } = asked();
    const shelf = shelfOf(read, around);
    const first = looked(shelf);
    await open[0]!.lose();
    comeBack();
    expect(open).toHaveLength(2);
    await open[1]!.lose();
    first.away();
    await vi.advanceTimersByTimeAsync(60_000);
    expect(open).toHaveLength(2);
    looked(shelf);
    await vi.advanceTimersByTimeAsync(0);
    expect(open).toHaveLength(3);
    await open[2]!.lose();
    seen = false;
    await vi.advanceTimersByTimeAsync(60_000);
    expect(open).toHaveLength(3);
    seen = true;
    comeBack();
    expect(open).toHaveLength(4);
  });
});

describe('answers that come in another order than they were asked for', () => {
  it('an older one does not take the place of a newer one', async () => {
    const { open, read } = asked();
    const shelf = shelfOf(read, around);
    const { now } = looked(shelf);
    await open[0]!.answer('one');
    void shelf.fresh('key');
    void shelf.fresh('key');
    await open[2]!.answer('three');
    await open[1]!.answer('two');
    expect(now()).toEqual({ value: 'three', problem: null, waiting: false });
  });

  it('what is put in meanwhile stays, and is looked up once more', async () => {
    const { open, read } = asked();
    const shelf = shelfOf(read, around);
    const { now } = looked(shelf);
    shelf.put('key', 'put');
    await open[0]!.answer('before');
    expect(now().value).toBe('put');
    expect(open).toHaveLength(2);
    await open[1]!.answer('after');
    expect(now()).toEqual({ value: 'after', problem: null, waiting: false });
  });

  it('news during a question is asked about after it', async () => {
    const { open, read } = asked();
    const shelf = shelfOf(read, around);
    const { now } = looked(shelf);
    shelf.freshAll();
    shelf.freshAll();
    await open[0]!.answer('before the news');
    expect(open).toHaveLength(2);
    await open[1]!.answer('after it');
    expect(now().value).toBe('after it');
    expect(open).toHaveLength(2);
  });
});
