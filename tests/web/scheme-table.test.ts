import { describe, expect, test } from 'vitest';
import type { SlotCuts } from '../../server/contract/plan-guides.ts';
import { choicesOf, chosen, pinsOfPlan, pinsWith } from '../../web/guide/scheme-sheets.ts';
import {
  fullness,
  moved,
  refusedKey,
  rowsOf,
  schemeOf,
  tableOf,
} from '../../web/guide/scheme-table.ts';

const piece = (card: number, layer: string, size: string) => ({
  card,
  layer,
  name: layer,
  size,
  half: false,
  up: true,
});
const slot = (name: string, ...pieces: ReturnType<typeof piece>[]): SlotCuts => ({
  slot: name,
  sheet: 'sheet',
  name: 'Sheet 1',
  laying: '',
  follows: null,
  picture: '',
  drawing: { width: 1, height: 1 },
  steps: [],
  pieces,
  left: [],
});
const slots = [
  slot('slot-1', piece(1, 'panel', '4 x 5 1/4 in'), piece(2, 'band', '4 x 1 in')),
  slot('slot-2', piece(1, 'band', '4 x 1 in'), piece(2, 'panel', '4 x 5 1/4 in')),
];
const rows = rowsOf(slots, () => undefined);

test('the table as it stands is sent as the plan has it', () => {
  const sent = schemeOf(tableOf(slots), rows);
  expect(sent.map(({ slot: name, pieces }) => [name, pieces.length])).toEqual([
    ['slot-1', 2],
    ['slot-2', 2],
  ]);
  expect(fullness('slot-1', tableOf(slots), rows, { width: '6 in', height: '6 in' })).toBeCloseTo(
    (4 * 5.25 + 4) / 36,
    9,
  );
});

test('a piece goes to another sheet, a new one or one that is there; an empty sheet is left out', () => {
  const band = rows.find(({ key }) => key === '1 band')!;
  const panel = rows.find(({ key }) => key === '2 panel')!;
  const once = moved(tableOf(slots), rows, band, null);
  expect(once.slots).toEqual(['slot-1', 'slot-2', 'own-1']);
  const twice = moved(once, rows, panel, 'own-1');
  expect(schemeOf(twice, rows).map(({ slot: name }) => name)).toEqual(['slot-1', 'own-1']);
});

test('pieces of one card and paper stay together', () => {
  const same = rows.map((row) => ({ ...row, paper: row.card === 1 ? 'one' : row.paper }));
  const panel = same.find(({ key }) => key === '1 panel')!;
  expect(moved(tableOf(slots), same, panel, 'slot-2').homes).toMatchObject({
    '1 panel': 'slot-2',
    '1 band': 'slot-2',
    '2 band': 'slot-1',
  });
});

test('a refusal that names a piece marks its row', () => {
  const sent = schemeOf(tableOf(slots), rows);
  expect(refusedKey('scheme[1].pieces[0]', sent)).toBe('1 band');
  expect(refusedKey('scheme', sent)).toBe(null);
  expect(refusedKey(undefined, sent)).toBe(null);
});

describe('the sheets of her own table', () => {
  const table = tableOf(slots);
  const sheetOf = (side: string): string | undefined => ({ 'a-front': 'a', 'b-back': 'b' })[side];

  test('are those that her pins name already, by sheet or by side', () => {
    const pins = [
      { card: 2, layer: 'band', sheet: 'a' },
      { card: 2, layer: 'panel', side: 'b-back' },
      { card: 1, layer: 'base', supply: 'kraft' },
    ];
    expect(choicesOf(table, pins, sheetOf)).toEqual({ 'slot-1': 'a', 'slot-2': 'b' });
    // Nothing was changed, so her pins stay as they are.
    expect(pinsWith({ 'slot-1': 'a', 'slot-2': 'b' }, table, rows, pins, sheetOf)).toEqual(pins);
  });

  test('become one pin a slot, and take the place of a pin that says another', () => {
    const kept = { card: 1, layer: 'base', supply: 'kraft' };
    const pins = [{ card: 2, layer: 'panel', side: 'b-back' }, kept];
    const choices = chosen(chosen({ 'slot-2': 'b' }, 'slot-1', 'c'), 'slot-2', 'a');
    expect(pinsWith(choices, table, rows, pins, sheetOf)).toEqual([
      kept,
      { card: 1, layer: 'panel', sheet: 'c' },
      { card: 1, layer: 'band', sheet: 'a' },
    ]);
    const none = chosen(chosen(choices, 'slot-1', ''), 'slot-2', '');
    expect(pinsWith(none, table, rows, pins, sheetOf)).toEqual([kept]);
  });

  test('go with the table; what she kept on the plan stays', () => {
    const hers = [
      { card: 2, layer: 'panel', side: 'b-back' },
      { card: 1, layer: 'base', supply: 'kraft' },
    ];
    const pins = pinsWith({ 'slot-1': 'c', 'slot-2': 'a' }, table, rows, hers, sheetOf);
    expect(pins.some(({ sheet }) => sheet !== undefined)).toBe(true);
    expect(pinsOfPlan(pins)).toEqual([hers[1]]);
    expect(pinsOfPlan(hers)).toEqual(hers);
  });
});
