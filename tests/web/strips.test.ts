import { expect, test } from 'vitest';
import type { BestSupplies, Supply } from '../../server/contract/supplies.ts';
import type { Side } from '../../server/contract/pads.ts';
import { stripsOf } from '../../web/supplies/strips.ts';

type Lab = [number, number, number];

const side = { palette: [{ lab: [90, 0, 5] }, { lab: [30, 2, -20] }] } as unknown as Side;

function greeting(lab: Lab, name: string, ink: string): BestSupplies['greetings'][number] {
  return {
    strip: { lab, hex: `#${name}`, name },
    cards: [],
    inks: [{ ink }],
  } as unknown as BestSupplies['greetings'][number];
}

function stock(id: string, lab: Lab, sheets: number | null = null, kind = 'cardstock'): Supply {
  return { id, kind, name: `Her ${id}`, colour: { lab, hex: `#${id}` }, sheets } as never;
}

test('every cardstock of hers is a strip by its own name, also one that looks like another', () => {
  const greetings = [greeting([90, 0, 5], 'cream', 'i1'), greeting([60, 10, 10], 'clay', 'i2')];
  const supplies = [
    stock('demo', [60, 10, 10]),
    stock('twin', [60, 10, 10]),
    stock('near', [60.3, 10.2, 9.9]),
    stock('paperlike', [90.1, 0, 5.1]),
    stock('used up', [60, 10, 10], 0),
    stock('ink', [60, 10, 10], null, 'ink'),
  ];
  const strips = stripsOf({ greetings }, side, supplies);
  expect(strips.map(({ name, hex }) => [name, hex])).toEqual([
    ['the paper’s cream', '#cream'],
    ['Her demo', '#demo'],
    ['Her twin', '#twin'],
    ['Her near', '#near'],
    ['Her paperlike', '#paperlike'],
  ]);
  expect(strips.map(({ inks }) => inks[0]!.ink)).toEqual(['i1', 'i2', 'i2', 'i2', 'i1']);
  expect(new Set(strips.map(({ key }) => key)).size).toBe(strips.length);
});

test('where the service knows no strip, none is offered', () => {
  expect(stripsOf({ greetings: [] }, side, [stock('demo', [60, 10, 10])])).toEqual([]);
});
