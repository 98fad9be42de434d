import { describe, expect, it, test } from 'vitest';
import type { Layer, NewLayout } from '../../server/contract/layouts.ts';
import {
  elementsOf,
  faultyElement,
  pulledElement,
  typedElement,
} from '../../web/layouts/elements.ts';
import { millimetres } from '../../web/lengths/lengths.ts';
import { called, layerCalled, layerNames, sharersOf } from '../../web/layouts/layer-names.ts';
import {
  added,
  inRole,
  kinds,
  shifted,
  withLayer,
  without,
} from '../../web/layouts/order-layers.ts';
import { withMore } from '../../web/layouts/more-elements.ts';
import { boxOf, grown, moved, rulerOf, stepOf, typed } from '../../web/layouts/place-layer.ts';
import { begun, changed, redone, undone } from '../../web/layouts/undo.ts';

const card = { width: '4 1/4 in', height: '5 1/2 in' };
const metric = { width: '105 mm', height: '148 mm' };
const base: Layer = {
  id: 'base',
  role: 'base',
  material: 'cardstock',
  paper: 'base',
  box: { x: '0 in', y: '0 in', ...card },
  shape: { kind: 'rectangle' },
};
const panel: Layer = {
  ...base,
  id: 'panel',
  role: 'panel',
  material: 'patterned',
  paper: 'main',
  box: { x: '1/8 in', y: '1/8 in', width: '4 in', height: '2 1/2 in' },
};
const layout: NewLayout = {
  name: 'Shore',
  card,
  fold: { kind: 'none', flat: card, scores: [], scoreFrom: 'left' },
  layers: [base, panel],
};

test('a pulled layer lands on a sixteenth of an inch and never leaves the card', () => {
  expect(moved(panel, card, 0, 26).box).toEqual({ ...panel.box, y: '1 1/8 in' });
  expect(moved(panel, card, 0.9, 0).box.x).toBe('3/16 in');
  // 4 in of a card of 4 1/4 in leave it 1/4 in to the right; the other way ends at the edge.
  expect(moved(panel, card, 500, 0).box.x).toBe('1/4 in');
  expect(moved(panel, card, -500, 0).box.x).toBe('0 in');
});

test('on a metric card it lands on whole millimetres', () => {
  const box = { x: '3 mm', y: '3 mm', width: '50 mm', height: '20 mm' };
  expect(moved({ ...panel, box }, metric, 10.4, -0.6).box).toEqual({
    ...box,
    x: '13 mm',
    y: '2 mm',
  });
});

test('the lower right corner sizes a layer between what a trimmer holds and the edge of the card', () => {
  expect(grown(panel, card, 0, 25.4).box).toEqual({ ...panel.box, height: '3 1/2 in' });
  expect(grown(panel, card, 500, -500).box).toEqual({
    ...panel.box,
    width: '4 1/8 in',
    height: '1/8 in',
  });
});

test('slanted corners keep their places in a box that is sized, and a notch stays within it', () => {
  const points = [
    { x: '0 in', y: '0 in' },
    { x: '4 in', y: '0 in' },
    { x: '2 in', y: '2 1/2 in' },
  ];
  const slanted: Layer = { ...panel, shape: { kind: 'corners', points } };
  expect(typed(slanted, card, 'width', '3')?.shape).toEqual({
    kind: 'corners',
    points: [points[0], { x: '3 in', y: '0 in' }, { x: '1 1/2 in', y: '2 1/2 in' }],
  });
  const banner: Layer = { ...panel, shape: { kind: 'banner', notch: '1 in' } };
  expect(typed(banner, card, 'width', '1')?.shape).toEqual({ kind: 'banner', notch: '1/2 in' });
});

test('a typed length is read in the unit of the card, or in its own', () => {
  expect(typed(panel, card, 'width', '3 1/4')?.box.width).toBe('3 1/4 in');
  expect(typed(panel, card, 'x', '25,4 mm')?.box.x).toBe('1 in');
  expect(typed(panel, metric, 'width', '40')?.box.width).toBe('40 mm');
  expect(typed(panel, card, 'width', 'wide')).toBeNull();
  expect(typed(panel, card, 'width', '0')).toBeNull();
});

test('added layers lie on top, in the middle, with names of their own; the base stays the lowest', () => {
  const two = added(added(layout, 'circle'), 'circle');
  expect(two.layers.map(({ id }) => id)).toEqual(['base', 'panel', 'circle-1', 'circle-2']);
  expect(two.layers.map(({ paper }) => paper)).toEqual(['base', 'main', 'paper-1', 'main']);
  expect(shifted(two, 3, -1).layers.map(({ id }) => id)).toEqual([
    'base',
    'panel',
    'circle-2',
    'circle-1',
  ]);
  expect(shifted(two, 1, -1)).toBe(two);
  expect(without(two, 0)).toBe(two);
  expect(without(two, 1).layers.map(({ id }) => id)).toEqual(['base', 'circle-1', 'circle-2']);
});

test('added layers begin on marks that are easy to find, in the middle of the card', () => {
  for (const kind of kinds) {
    const [inches, whole] = [added(layout, kind), added({ ...layout, card: metric }, kind)].map(
      ({ layers }) => boxOf(layers.at(-1)!),
    );
    for (const mm of Object.values(inches!))
      expect((mm / 25.4) * 8).toBeCloseTo(Math.round((mm / 25.4) * 8), 6);
    for (const mm of Object.values(whole!)) expect(mm).toBeCloseTo(Math.round(mm), 6);
    const { x, width } = inches!;
    expect(2 * x + width).toBeCloseTo(millimetres(card.width)!, 6);
    if (kind === 'circle') expect(inches!.height).toBeCloseTo(width, 6);
  }
});

test('greetings and mats are plain, all of them of one cardstock; a plain panel stays as she chose it', () => {
  const two = added(added(layout, 'greeting'), 'greeting');
  expect(two.layers.slice(2)).toMatchObject([
    { id: 'greeting-1', role: 'greeting', material: 'cardstock', paper: 'paper-1' },
    { id: 'greeting-2', role: 'greeting', material: 'cardstock', paper: 'paper-1' },
  ]);
  expect(added(layout, 'panel').layers[2]?.id).toBe('panel-1');
  const mat = inRole(layout, panel, 'mat');
  expect(mat).toMatchObject({ role: 'mat', material: 'cardstock' });
  expect(inRole(layout, mat, 'panel')).toMatchObject({ role: 'panel', material: 'patterned' });
  const plain: Layer = { ...panel, material: 'cardstock', paper: 'sand' };
  expect(inRole(layout, plain, 'strip')).toEqual({ ...plain, role: 'strip' });
});

test('undo and redo walk without limit; a new step ends what could be redone', () => {
  let drawn = begun(0);
  for (let step = 1; step <= 500; step += 1) drawn = changed(drawn, step);
  expect(changed(drawn, 500)).toBe(drawn);
  for (let step = 0; step < 501; step += 1) drawn = undone(drawn);
  expect(drawn.now).toBe(0);
  expect(redone(redone(drawn)).now).toBe(2);
  expect(redone(changed(redone(drawn), 9)).now).toBe(9);
});

describe('what is stamped or cut with a die', () => {
  const stamped = withMore(layout, 'stamp', 1);
  const [stamp] = elementsOf(stamped);

  it('begins in the middle of its layer, half as large as it', () => {
    expect(stamp).toMatchObject({ id: 'stamp-1', kind: 'stamp', layer: layout.layers[1]!.id });
    const layer = boxOf(layout.layers[1]!);
    const own = boxOf(stamp!);
    expect(own.width).toBeCloseTo(layer.width / 2, 0);
    expect(own.height).toBeCloseTo(layer.height / 2, 0);
    expect(own.x + own.width / 2).toBeCloseTo(layer.x + layer.width / 2, 0);
    expect(own.y + own.height / 2).toBeCloseTo(layer.y + layer.height / 2, 0);
    expect(elementsOf(withMore(stamped, 'stamp', 1))[1]!.id).toBe('stamp-2');
  });

  it('is large enough to be seen on a narrow strip, and leaves it an eighth of an inch of air', () => {
    const box = { ...panel.box, width: '3 in', height: '5/8 in' };
    const strip = { ...layout, layers: [base, { ...panel, box }] };
    expect(elementsOf(withMore(strip, 'stamp', 1))[0]!.box).toMatchObject({
      width: '1 1/2 in',
      height: '3/8 in',
    });
  });

  it('lies on the layer that it is pulled onto, and stays with its own where it was only touched', () => {
    const greeting = {
      ...panel,
      id: 'greeting-1',
      box: { ...panel.box, y: '3 in', height: '2 in' },
    };
    const two = { ...stamped, layers: [...stamped.layers, greeting] };
    const home = (byY: number): string => elementsOf(pulledElement(two, 0, 0, byY))[0]!.layer;
    expect(home(0)).toBe('panel');
    expect(home(25.4 * 2.6)).toBe('greeting-1');
    // Half on the panel and half beyond it, only the card holds it whole.
    expect(home(25.4 * 1.2)).toBe('base');
  });

  it('is pulled and typed on the steps of the ruler, and goes with its layer', () => {
    const step = stepOf(rulerOf(layout.card));
    const pulled = elementsOf(pulledElement(stamped, 0, 2.4 * step, 0))[0]!;
    expect(boxOf(pulled).x - boxOf(stamp!).x).toBeCloseTo(2 * step, 6);
    expect(typedElement(stamp!, layout.card, 'width', 'wide')).toBeNull();
    expect(typedElement(stamp!, layout.card, 'width', '20 mm')).not.toBeNull();
    expect(elementsOf(without(stamped, 1))).toEqual([]);
    expect(faultyElement('elements[3].box')).toBe(3);
    expect(faultyElement('layers[3].box')).toBeNull();
  });
});

describe('layers are called by what they are and where they lie', () => {
  const at = (id: string, role: Layer['role'], box: Layer['box']): Layer => ({
    ...panel,
    id,
    role,
    box,
  });
  const left = at('panel-1', 'panel', { x: '0 in', y: '0 in', width: '2 in', height: '5 1/2 in' });
  const right = at('panel-2', 'panel', {
    x: '2 1/4 in',
    y: '0 in',
    width: '2 in',
    height: '5 1/2 in',
  });
  const top = at('strip-1', 'strip', { x: '0 in', y: '0 in', width: '4 1/4 in', height: '1 in' });
  const low = at('strip-2', 'strip', {
    x: '0 in',
    y: '4 1/2 in',
    width: '4 1/4 in',
    height: '1 in',
  });
  const names = (layers: Layer[]): string[] =>
    [...layerNames({ ...layout, layers: [base, ...layers] }).values()].sort();

  test('by their places where several are alike, by what they are where one is alone', () => {
    expect(names([left, right, top, low])).toEqual([
      'base',
      'bottom strip',
      'left panel',
      'right panel',
      'top strip',
    ]);
    expect(names([left])).toEqual(['base', 'panel']);
  });

  test('two in one place are told apart by numbers, and no two have one name', () => {
    const again = { ...left, id: 'panel-3' };
    const found = names([left, again, right]);
    expect(found).toContain('left panel 1');
    expect(found).toContain('left panel 2');
    expect(new Set(found).size).toBe(found.length);
  });

  test('a name that she gives stays as she wrote it wherever the layer goes; ids stay whatever it is called', () => {
    const stamped = withMore({ ...layout, layers: [base, left, right] }, 'stamp', 1);
    const hers = called(stamped, 1, ' Mère & Sea ');
    expect(hers.layers.map(({ id }) => id)).toEqual(['base', 'panel-1', 'panel-2']);
    expect(elementsOf(hers)[0]!.layer).toBe('panel-1');
    expect(layerCalled(hers, 'panel-1')).toBe('Mère & Sea');
    const gone = withLayer(hers, 1, moved(hers.layers[1]!, card, 50, 0));
    expect(layerCalled(gone, 'panel-1')).toBe('Mère & Sea');
    // The same name twice is told apart by a number.
    expect(layerCalled(called(hers, 2, 'mère & sea'), 'panel-2')).toBe('Mère & sea 2');
    expect(called(hers, 1, ' ')).toEqual(stamped);
    expect(layerCalled(called(hers, 1, ''), 'panel-1')).toBe('Left panel');
  });

  test.each(['Top strip', 'panel', 'Верхняя полоса', '上', '42'])(
    'a name of her own, %s, is shown as it is, whatever it looks like',
    (name) => {
      const hers = called({ ...layout, layers: [base, left, right] }, 1, name);
      expect(layerCalled(hers, 'panel-1').toLowerCase()).toBe(name.toLowerCase());
      expect(hers.layers[1]).toEqual({ ...left, called: name });
      expect(hers.layers[2]).toBe(right);
    },
  );

  test('a paper is told by what else is cut from it', () => {
    const layers = [base, left, { ...right, paper: left.paper }];
    expect(sharersOf({ ...layout, layers }, layers[1]!, left.paper)).toBe('right panel');
    expect(sharersOf({ ...layout, layers }, layers[0]!, 'base')).toBe('');
  });
});

test('what is stamped or glued on a layer goes where the layer goes, and comes back with it', () => {
  const stamped = withMore(layout, 'stamp', 1);
  const before = boxOf(elementsOf(stamped)[0]!);
  const pulled = withLayer(stamped, 1, moved(panel, card, 0, 25.4));
  const after = boxOf(elementsOf(pulled)[0]!);
  expect(after.y - before.y).toBeCloseTo(25.4, 6);
  expect(after.x).toBe(before.x);
  const back = withLayer(pulled, 1, moved(pulled.layers[1]!, card, 0, -25.4));
  expect(back.elements).toEqual(stamped.elements);
  // Sized by its lower right corner, or when another layer moves, it stays.
  expect(withLayer(stamped, 1, grown(panel, card, 0, 10)).elements).toEqual(stamped.elements);
  const other = { ...panel, id: 'other' };
  const two = { ...stamped, layers: [base, panel, other] };
  expect(withLayer(two, 2, moved(other, card, 0, 25.4)).elements).toEqual(stamped.elements);
});
