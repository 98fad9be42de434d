import { afterEach, beforeEach, describe, expect, test, vi } from 'vitest';
import { showTogether, WAIT_MS } from '../../web/plan/together.ts';

/** Pictures on their way, each let come by hand; `shown` lists which are on the screen. */
function onTheirWay(
  belongTo: string,
  names: string,
): { come: (name: string) => Promise<void>; shown: string[] } {
  const shown: string[] = [];
  const arrive = new Map<string, () => void>();
  for (const name of names)
    showTogether(
      belongTo,
      new Promise((resolve) => arrive.set(name, () => resolve(() => shown.push(name)))),
    );
  return {
    shown,
    come: async (name) => {
      arrive.get(name)!();
      await vi.advanceTimersByTimeAsync(0);
    },
  };
}

describe('pictures that belong together', () => {
  beforeEach(() => {
    vi.useFakeTimers();
  });
  afterEach(() => {
    vi.useRealTimers();
  });

  test('are shown in one go with the last of them, which does not wait', async () => {
    const { come, shown } = onTheirWay('a plan', 'abc');
    await come('b');
    await come('a');
    expect(shown).toEqual([]);
    await come('c');
    expect(shown.join('')).toBe('bac');
  });

  test('wait no longer than a moment for one that is late, from the first that is ready', async () => {
    const { come, shown } = onTheirWay('a plan', 'abcd');
    await come('a');
    await vi.advanceTimersByTimeAsync(WAIT_MS - 1);
    await come('b');
    expect(shown).toEqual([]);
    await vi.advanceTimersByTimeAsync(1);
    expect(shown.join('')).toBe('ab');
    await come('c');
    expect(shown.join('')).toBe('ab');
    await come('d');
    expect(shown.join('')).toBe('abcd');
  });

  test('do not wait for those of another plan, nor for what was shown before', async () => {
    const one = onTheirWay('one plan', 'ab');
    const other = onTheirWay('another', 'c');
    await other.come('c');
    expect(other.shown).toEqual(['c']);
    await one.come('a');
    await one.come('b');
    const later = onTheirWay('one plan', 'd');
    await later.come('d');
    expect(later.shown).toEqual(['d']);
    await vi.advanceTimersByTimeAsync(2 * WAIT_MS);
    expect([...one.shown, ...other.shown, ...later.shown].join('')).toBe('abcd');
  });
});
