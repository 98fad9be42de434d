import { describe, expect, it } from 'vitest';
import type { Layer, NewLayout } from '../../server/contract/layouts.ts';
import { layoutFromWire, layoutOnWire } from '../../server/http/wire/layouts.ts';
import { catalogue } from '../../server/layouts/catalogue.ts';
import { checkElements } from '../../server/layouts/check-elements.ts';
import type { Room } from '../../server/layouts/greeting-room.ts';
import { elementsOf } from '../../web/layouts/elements.ts';
import { largestFree } from '../../web/layouts/free-place.ts';
import { greetingWord, meet, squeezedGreetings } from '../../web/layouts/greeting-word.ts';
import { withMore } from '../../web/layouts/more-elements.ts';
import { boxOf } from '../../web/layouts/place-layer.ts';
import { chanceOf } from '../colour/drawn.ts';

describe('the largest free part of a room', () => {
  const room: Room = { x: 0, y: 0, width: 100, height: 60 };

  it('is all of it where nothing lies there, and nothing where all is taken', () => {
    expect(largestFree(room, [])).toEqual(room);
    expect(largestFree(room, [{ x: -1, y: -1, width: 102, height: 62 }])).toBeNull();
  });

  it('meets nothing that lies there and cannot be bettered by any place on a grid', () => {
    const chance = chanceOf(4);
    const upTo = (most: number): number => Math.floor(most * chance());
    const useOf = ({ width, height }: Room): number =>
      Math.min(width, 2 * height) * Math.min(height, 2 * width);
    for (let round = 0; round < 40; round++) {
      const small: Room = { x: 0, y: 0, width: 12, height: 9 };
      const taken = Array.from({ length: 1 + upTo(4) }, (): Room => ({
        x: upTo(11),
        y: upTo(8),
        width: 1 + upTo(5),
        height: 1 + upTo(5),
      }));
      const found = largestFree(small, taken);
      let most = 0;
      for (let x = 0; x < 12; x++)
        for (let y = 0; y < 9; y++)
          for (let width = 1; x + width <= 12; width++)
            for (let height = 1; y + height <= 9; height++) {
              const one = { x, y, width, height };
              if (useOf(one) > most && !taken.some((other) => meet(one, other))) most = useOf(one);
            }
      expect(found === null ? 0 : useOf(found)).toBe(most);
      if (found !== null) expect(taken.some((other) => meet(found, other))).toBe(false);
    }
  });
});

describe('a new stamp', () => {
  const hers = catalogue.map((layout): NewLayout => layoutOnWire(layout));
  const greetingsOf = ({ layers }: NewLayout): Layer[] =>
    layers.filter(({ role }) => role === 'greeting');

  it.each(hers.map((layout) => [layout.name, layout] as const))(
    'comes to a free place of %s, whichever layer is chosen, and so does the one after it',
    (_, layout) => {
      for (let chosen = 0; chosen < layout.layers.length; chosen++) {
        let now = layout;
        for (let more = 0; more < 2; more++) {
          const before = now;
          now = withMore(now, 'stamp', chosen);
          const stamp = boxOf(elementsOf(now).at(-1)!);
          for (const one of elementsOf(before)) expect(meet(stamp, boxOf(one))).toBe(false);
          for (const one of greetingsOf(now))
            expect(meet(stamp, greetingWord(one, elementsOf(before)).box)).toBe(false);
        }
        expect(squeezedGreetings(now)).toEqual([]);
        expect(() => checkElements(layoutFromWire({ ...now, id: 'hers' }))).not.toThrow();
      }
    },
  );

  const base = hers[0]!.layers[0]!;
  const alone: NewLayout = {
    ...hers[0]!,
    elements: [],
    layers: [
      base,
      {
        ...base,
        id: 'greeting-1',
        role: 'greeting',
        box: { x: '1/2 in', y: '2 in', width: '3 in', height: '5/8 in' },
      },
    ],
  };

  it('comes to the card itself where no other layer has room, and else to the beginning of the greeting', () => {
    const onCard = withMore(alone, 'stamp', 1);
    expect(elementsOf(onCard)[0]!.layer).toBe(base.id);
    expect(squeezedGreetings(onCard)).toEqual([]);
    expect(() => checkElements(layoutFromWire({ ...onCard, id: 'hers' }))).not.toThrow();
    const strip = { width: '3 in', height: '5/8 in' };
    const full = { x: '0 in', y: '0 in', ...strip };
    const layers = alone.layers.map((layer) => ({ ...layer, box: full }));
    const narrow = withMore({ ...alone, card: strip, layers }, 'stamp', 1);
    const [stamp] = elementsOf(narrow);
    expect(stamp!.layer).toBe('greeting-1');
    expect(meet(boxOf(stamp!), greetingWord(narrow.layers[1]!, [stamp!]).box)).toBe(false);
    expect(squeezedGreetings(narrow)).toEqual([]);
  });

  it('is told where it leaves the words little room, and where it covers all of their length', () => {
    const stamp = (x: string, width: string): NewLayout => ({
      ...alone,
      elements: [
        {
          id: 'stamp-1',
          kind: 'stamp',
          layer: 'greeting-1',
          box: { x, y: '2 1/16 in', width, height: '1/2 in' },
        },
      ],
    });
    expect(squeezedGreetings(stamp('1 1/4 in', '1 1/2 in'))).toMatchObject([{ covered: false }]);
    expect(squeezedGreetings(stamp('1/2 in', '1/4 in'))).toEqual([]);
    expect(squeezedGreetings(stamp('1/2 in', '3 in'))).toMatchObject([{ covered: true }]);
  });
});
