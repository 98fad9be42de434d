import { expect, test } from 'vitest';
import type { PlacedPiece } from '../../server/cutting/piece.ts';
import type { PatternTraits } from '../../server/pattern/traits.ts';
import { keepingUp, withUp } from '../../server/pattern/told-up.ts';
import { lies } from '../../server/plan/lying.ts';

const read: PatternTraits = {
  repeat: 20,
  scale: 8,
  direction: 'one-way',
  up: 0,
  busyness: 0.5,
  descriptor: [],
};
const tall = {
  piece: { size: { width: 100, height: 300 } },
  turned: false,
} as unknown as PlacedPiece;

test('a plan goes by the up that she said: a print that points sideways lies on a piece cut along', () => {
  expect(lies(read, tall)).toBe(false);
  expect(lies(withUp(read, 90), tall)).toBe(true);
  expect(lies(withUp(read, 90), { ...tall, turned: true })).toBe(false);
  expect(lies(withUp(read, 'none'), { ...tall, turned: true })).toBe(false);
});

test('reading again takes what it sees, but not back what she said', () => {
  const again = { ...read, up: 270, busyness: 0.7 } as const;
  expect(keepingUp(again, read)).toBe(again);
  expect(keepingUp(again, withUp(read, 90))).toEqual({ ...again, up: 90, told: true });
  expect(keepingUp(again, withUp(read, 'none'))).toMatchObject({ direction: 'none', told: true });
});
