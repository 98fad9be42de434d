import { describe, expect, it } from 'vitest';
import { checkLayout } from '../../server/layouts/check-layout.ts';
import { crowding, elementSaid } from '../../server/layouts/check-elements.ts';
import type { Element, Layout } from '../../server/layouts/layout.ts';
import { spareMiddles } from '../../server/layouts/spare-middle.ts';
import { Refusal } from '../../server/refusals/refusal.ts';
import { parseSize } from '../../server/lengths/parse-size.ts';
import { card, layer } from './worlds.ts';

/** On a card of 4 1/4 x 5 1/2 in a panel of 2 x 4 in; a strip lies over its lower inch. */
const layers = [
  layer('panel', '1 in, 1/2 in, 2 in, 4 in'),
  layer('strip', '0 in, 3 1/2 in, 4 1/4 in, 1 in'),
];

function withElement(at: string, on = 'panel', kind: Element['kind'] = 'die-cut'): Layout {
  const { box } = layer('leaf', at);
  return {
    ...card('4 1/4 x 5 1/2 in', layers),
    elements: [{ id: 'leaf', kind, layer: on, box }],
  };
}

function refusalOf(layout: Layout): Refusal | null {
  try {
    checkLayout(layout);
    return null;
  } catch (fault) {
    if (fault instanceof Refusal) return fault;
    throw fault;
  }
}

describe('a stamped or die-cut element', () => {
  it('fits with an eighth of an inch of air on all sides', () => {
    const layout = withElement('1 1/8 in, 5/8 in, 1 3/4 in, 2 3/4 in');
    expect(refusalOf(layout)).toBeNull();
    expect(crowding(layout)).toEqual([]);
  });

  it.each([
    ['an edge of its layer', '1 1/16 in, 5/8 in, 1 1/2 in, 2 in'],
    ['the layer over it', '1 1/4 in, 1 in, 1 in, 2 7/16 in'],
  ])('crowds %s', (_, at) => {
    const layout = withElement(at);
    expect(refusalOf(layout)).toBeNull();
    expect(crowding(layout).map(({ id }) => id)).toEqual(['leaf']);
  });

  it.each([
    ['leaves its layer', '1 in, 1/2 in, 2 1/16 in, 1 in'],
    ['lies under another', '1 1/4 in, 1 in, 1 in, 3 in'],
  ])('that %s does not fit', (_, at) => {
    const refusal = refusalOf(withElement(at, 'panel', 'stamp'));
    expect(refusal).toMatchObject({ kind: 'does-not-fit', field: 'elements[0].box' });
    expect(refusal!.message).toMatch(/the stamp "leaf".*does not fit/);
  });

  it('on no layer of the layout is refused', () => {
    const refusal = refusalOf(withElement('1 in, 1 in, 1 in, 1 in', 'none'));
    expect(refusal).toMatchObject({ kind: 'not-found', field: 'elements[0].layer' });
  });
});

describe('the middle of a mat', () => {
  it('is spare half an inch inside the layer that hides it', () => {
    const layout = card('4 1/4 x 5 1/2 in', [
      layer('mat', '1/8 in, 1/8 in, 4 in, 5 1/4 in'),
      layer('panel', '1/4 in, 1/4 in, 3 3/4 in, 5 in'),
    ]);
    expect(spareMiddles(layout)).toEqual([
      { layer: 'mat', under: 'panel', window: parseSize('2 3/4 x 4 in') },
    ]);
  });

  it('is kept where it is seen, under a base, under something narrow or round', () => {
    const round = layer('round', '1/4 in, 1/4 in, 3 3/4 in, 5 in', { shape: { kind: 'circle' } });
    const mat = layer('mat', '1/8 in, 1/8 in, 4 in, 5 1/4 in');
    const narrow = layer('band', '1/4 in, 2 in, 3 3/4 in, 1 15/16 in');
    for (const above of [[round], [narrow], []])
      expect(spareMiddles(card('4 1/4 x 5 1/2 in', [mat, ...above]))).toEqual([]);
  });
});

it('one that the editor has numbered is told by its number, one with a name by it', () => {
  const { box } = layer('leaf', '1 in, 1 in, 1 1/4 in, 1/2 in');
  const said = (id: string, kind: 'stamp' | 'die-cut'): string =>
    elementSaid({ id, kind, layer: 'greeting', box }, 'in');
  expect(said('stamp-2', 'stamp')).toBe('stamp 2 (1 1/4 in x 1/2 in)');
  expect(said('leaf', 'die-cut')).toBe('the die cut "leaf" (1 1/4 in x 1/2 in)');
});
