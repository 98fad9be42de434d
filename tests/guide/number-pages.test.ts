import { describe, expect, test } from 'vitest';
import { factsOf } from '../../server/guide/facts.ts';
import { guidePages } from '../../server/guide/guide-pages.ts';
import { numberPages, sheetsToNumber } from '../../server/guide/number-pages.ts';
import { picturesIn } from '../../server/guide/drawing.ts';
import { textOf } from './flat.ts';
import { guideWorld, layoutsOf } from './world.ts';

const ask = guideWorld(layoutsOf('us').slice(0, 4), 'in');
const facts = factsOf(ask);
const used = ask.pad.sheets.filter(({ id }) => facts.slots.some(({ sheet }) => sheet.id === id));

describe('the first work of the guide is to number the sheets', () => {
  test('it stands before anything is said of a sheet’s cuts', () => {
    const names = guidePages(ask).map(({ name }) => name);
    expect(names.indexOf('First, number your sheets')).toBe(1);
  });

  test('with every sheet that is cut and no other, by the name the guide calls it', () => {
    const said = numberPages(ask, facts).flatMap(({ marks }) => textOf(marks));
    for (const sheet of ask.pad.sheets)
      expect(said.includes(sheet.label)).toBe(used.includes(sheet));
  });

  test('with a picture of both its sides', () => {
    const shown = numberPages({ ...ask, picture: (side) => `${side}.jpg` }, facts).flatMap(
      ({ marks }) => picturesIn(marks),
    );
    const sides = used.flatMap(({ front, back }) =>
      [front, back].flatMap((side) => (side === null ? [] : [`${side.id}.jpg`])),
    );
    expect(shown.sort()).toEqual(sides.sort());
  });

  test('counts a sheet for each person, and leaves out one that stays whole', () => {
    const [one] = sheetsToNumber(ask, facts);
    const [five] = sheetsToNumber({ ...ask, people: 5 }, facts);
    expect(five!.count).toBe(5 * one!.count);
    const slots = facts.slots.filter(({ sheet }) => sheet.id === one!.sheet.id);
    const fromParts = slots.map(({ slot }) => ({
      slot: slot.id,
      piece: slot.pieces[0]!.piece.id,
      size: slot.pieces[0]!.piece.size,
    }));
    const rest = sheetsToNumber({ ...ask, fromParts }, facts).map(({ sheet }) => sheet.id);
    expect(rest).not.toContain(one!.sheet.id);
  });

  test('a big pad goes on on a next page, nothing off the page', () => {
    const many = Array.from({ length: 48 }, (_, at) => ({
      ...ask.pad.sheets[0]!,
      id: `s${at}`,
      label: `Sheet ${at + 1}`,
    }));
    const slots = many.map((sheet, at) => ({ ...facts.slots[0]!, sheet, name: `Sheet ${at + 1}` }));
    const pages = numberPages({ ...ask, pad: { ...ask.pad, sheets: many } }, { ...facts, slots });
    expect(pages.length).toBeGreaterThan(1);
    const said = pages.flatMap(({ marks }) => textOf(marks));
    expect(many.every(({ label }) => said.filter((one) => one === label).length === 1)).toBe(true);
  });
});
