import { afterAll, describe, expect, it } from 'vitest';
import { openClerk } from '../../server/clerk.ts';
import { groupPad } from '../../server/pad/group-pad.ts';
import type { Sheet, Side } from '../../server/pad/pad.ts';
import { coordinationOf } from '../../server/plan/coordination/coordination.ts';
import { Refusal } from '../../server/refusals/refusal.ts';
import { sheetOf, sideOf } from '../pad/sides.ts';

const { clerk, line } = openClerk();
afterAll(() => line.close());

const COLOURS = ['#b04a3c', '#3c6fb0', '#4f8f4a'];

/** Six sheets in three colours, on three patterns. */
const SHEETS: readonly Sheet[] = [0, 1, 2, 3, 4, 5].map((at) =>
  sheetOf(`sheet-${at}`, printed(`front-${at}`, at), printed(`back-${at}`, at + 1)),
);

function printed(id: string, at: number): Side {
  return sideOf(
    id,
    [
      [COLOURS[at % 3]!, 0.7],
      ['#f4efe4', 0.3],
    ],
    Math.floor(at / 2),
  );
}

describe('the clerk in its thread', () => {
  it('groups a pad as the core does, to the last bit', async () => {
    const grouping = await clerk.group(SHEETS);
    expect(grouping).toEqual(groupPad(SHEETS));
    expect(grouping.patternSets.length).toBeGreaterThan(0);
  });

  it('says the same of pairs as the core does, so many as are asked for', async () => {
    const sides = SHEETS.flatMap(({ front, back }) => [front!, back!]);
    const core = coordinationOf(sides).slice(0, 7);
    expect(await clerk.pairs(sides, 7)).toEqual(
      core.map(({ a, b, score, words }) => ({ a, b, score, words })),
    );
  });

  it('lets the event loop turn while it works', async () => {
    const many = Array.from({ length: 60 }, (_, at) => ({
      ...SHEETS[at % 6]!,
      id: `sheet ${at}`,
    }));
    let turns = 0;
    const clock = setInterval(() => (turns += 1), 1);
    await clerk.group(many);
    clearInterval(clock);
    expect(turns).toBeGreaterThan(10);
  });

  it('refuses in words what the core refuses, and goes on', async () => {
    const none = { title: '', pad: { sheets: [] }, cards: [], scheme: { slots: [] } };
    const stray = {
      ...none,
      plan: { cards: [{ number: 1, layers: [] }], slots: {} },
      supplies: [],
    };
    await expect(clerk.guideOnScreen(stray as never)).rejects.toBeInstanceOf(Refusal);
    expect(await clerk.group([])).toEqual(groupPad([]));
  });
});
