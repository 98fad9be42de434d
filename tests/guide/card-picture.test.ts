import { describe, expect, test } from 'vitest';
import { CARD_ROOM, cardMarks } from '../../server/guide/card-marks.ts';
import { cardPicture } from '../../server/guide/card-picture.ts';
import type { Stroke } from '../../server/guide/drawing.ts';
import { elementMarks } from '../../server/guide/element-marks.ts';
import { greetingMarks } from '../../server/guide/greeting-marks.ts';
import { layoutDrawing } from '../../server/guide/layout-drawing.ts';
import type { Paint, Turn } from '../../server/guide/paint.ts';
import { escape } from '../../server/guide/svg.ts';
import { catalogue } from '../../server/layouts/catalogue.ts';
import type { Layer, Layout } from '../../server/layouts/layout.ts';
import { outline } from '../../server/layouts/outline.ts';
import { toMillimetres } from '../../server/lengths/length.ts';
import { flat } from './flat.ts';

const ONE = catalogue.find(({ id }) => id === 'one-paper-us')!;
const PANEL = ONE.layers.find(({ id }) => id === 'panel')!;
const SWATCH = { width: 152.4, height: 152.4 };

function paper(x: number, y: number, turned: Turn): Paint {
  return { kind: 'paper', href: 'sheet.jpg', swatch: SWATCH, x, y, turned };
}

const plain: Paint = { kind: 'colour', hex: '#f4efe6' };

describe('the picture of a card', () => {
  test.each([
    [0, 0],
    [90, 3],
    [180, 2],
    [270, 1],
  ] as const)(
    'a part turned by %d degrees lies over the layer: its corner %d comes to the upper left',
    (turned, corner) => {
      const marks = cardMarks(ONE, (id) => (id === 'panel' ? paper(10, 20, turned) : plain));
      const shown = flat(marks).find(({ mark }) => mark.kind === 'picture')!;
      expect(shown.clip).toEqual(outline(PANEL));
      const [w, h] = [toMillimetres(PANEL.box.width), toMillimetres(PANEL.box.height)];
      const [cutWidth, cutHeight] = turned % 180 === 0 ? [w, h] : [h, w];
      const part = [
        [10, 20],
        [10 + cutWidth, 20],
        [10 + cutWidth, 20 + cutHeight],
        [10, 20 + cutHeight],
      ][corner]!;
      if (shown.mark.kind !== 'picture') throw new Error('no picture');
      const at = shown.place({ x: shown.mark.x + part[0]!, y: shown.mark.y + part[1]! });
      expect(at.x).toBeCloseTo(toMillimetres(PANEL.box.x), 6);
      expect(at.y).toBeCloseTo(toMillimetres(PANEL.box.y), 6);
      expect(shown.mark).toMatchObject(SWATCH);
    },
  );

  test('layers come in the order of stacking', () => {
    const colours = new Map(ONE.layers.map(({ id }, index) => [id, `#00000${index}`]));
    const marks = cardMarks(ONE, (id) => ({ kind: 'colour', hex: colours.get(id)! }));
    const fills = flat(marks).flatMap(({ mark }) =>
      mark.kind === 'area' && /^#00000\d$/.test(mark.fill ?? '') ? [mark.fill] : [],
    );
    expect(fills).toEqual([...colours.values()]);
  });

  test('stands in true proportion, with room for its shadow', () => {
    const svg = cardPicture(ONE, () => plain);
    const [, x, y, width, height] = /viewBox="(\S+) (\S+) (\S+) (\S+)"/.exec(svg)!.map(Number);
    expect([x, y]).toEqual([-CARD_ROOM, -CARD_ROOM]);
    // US card: 4 1/4 x 5 1/2 in (common practice, no source).
    expect(width! - 2 * CARD_ROOM).toBeCloseTo(4.25 * 25.4, 2);
    expect(height! - 2 * CARD_ROOM).toBeCloseTo(5.5 * 25.4, 2);
  });

  test('names a swatch once, however many layers show it', () => {
    const svg = cardPicture(ONE, () => paper(0, 0, 0));
    expect(svg.match(/sheet\.jpg/g)).toHaveLength(1);
    expect(svg.match(/<use /g)).toHaveLength(ONE.layers.length);
  });

  test('both flaps of a gate meet in the middle of the card', () => {
    const gate = catalogue.find(({ id }) => id === 'gate-us')!;
    const middle = toMillimetres(gate.card.width) / 2;
    const lines = flat(cardMarks(gate, () => plain)).flatMap(({ mark }) =>
      mark.kind === 'line' && mark.from.x === mark.to.x ? [mark.from.x] : [],
    );
    expect(lines.some((at) => Math.abs(at - middle) < 0.01)).toBe(true);
  });

  test('addresses and colours cannot break out of the drawing', () => {
    const svg = cardPicture(
      ONE,
      () => ({ ...paper(0, 0, 0), href: `"/><script>'&\u0000` }) as Paint,
    );
    expect(svg).not.toContain('<script>');
    expect(svg).toContain('&quot;/&gt;&lt;script&gt;');
    expect(escape('a\u0000b')).toBe('ab');
  });
});

describe('what is stamped or glued on', () => {
  const stamped = catalogue.find(({ id }) => id === 'stamped-label-us')!;
  const reach = (elements: Layout['elements']): number[] => {
    const spots = flat(elementMarks(elements)).flatMap(({ mark, place }) =>
      mark.kind === 'area' && mark.fill === undefined
        ? mark.corners.map(place)
        : mark.kind === 'line'
          ? [place(mark.from), place(mark.to)]
          : [],
    );
    const [xs, ys] = [spots.map(({ x }) => x), spots.map(({ y }) => y)];
    return [Math.min(...xs), Math.min(...ys), Math.max(...xs), Math.max(...ys)];
  };

  test('is drawn on the card and in the drawing of the layout, at its place and size', () => {
    const [stamp] = stamped.elements!;
    const { x, y, width, height } = stamp!.box;
    const box = [x, y, x + width, y + height].map((length) => length / 320);
    reach([stamp!]).forEach((at, index) => expect(at).toBeCloseTo(box[index]!, 6));
    const without = { ...stamped, elements: [] };
    const more = flat(cardMarks(stamped, () => plain)).length;
    expect(more - flat(cardMarks(without, () => plain)).length).toBe(
      flat(elementMarks(stamped.elements)).length,
    );
    expect(layoutDrawing(stamped)).not.toBe(layoutDrawing(without));
  });

  test('leaves the greeting its own part: the word for it keeps beside the stamp', () => {
    const { box } = stamped.elements![0]!;
    const strip = stamped.layers.find(({ role }) => role === 'greeting')!;
    const spots = greetingMarks(strip, stamped.elements).flatMap((mark) =>
      mark.kind === 'stroke' ? mark.spots : [],
    );
    expect(spots.length).toBeGreaterThan(100);
    for (const { x, y } of spots) {
      expect(x).toBeGreaterThan((box.x + box.width) / 320);
      expect(x).toBeLessThan((strip.box.x + strip.box.width) / 320);
      expect(y).toBeGreaterThan(strip.box.y / 320);
      expect(y).toBeLessThan((strip.box.y + strip.box.height) / 320);
    }
  });

  // Boxes in mm: the strip, what lies on it, and the stretch of the longer side that is left to the word.
  test.each([
    ['upright, at its top in the middle', [10, 10, 20, 90], [[12, 12, 16, 20]], [32, 100]],
    ['upright, at its foot', [10, 10, 20, 90], [[12, 70, 16, 20]], [10, 70]],
    ['1 mm left of the middle', [10, 10, 90, 20], [[44, 12, 20, 16]], [64, 100]],
    ['1 mm right of the middle', [10, 10, 90, 20], [[46, 12, 20, 16]], [10, 46]],
    [
      'at both ends',
      [10, 10, 90, 20],
      [
        [10, 12, 20, 16],
        [80, 12, 20, 16],
      ],
      [30, 80],
    ],
  ] as const)('the word keeps off what lies on a greeting %s', (_, at, on, [from, to]) => {
    const boxOf = ([x, y, width, height]: readonly [number, number, number, number]): unknown => ({
      x: x * 320,
      y: y * 320,
      width: width * 320,
      height: height * 320,
    });
    const strip = { id: 'words', role: 'greeting', box: boxOf(at) } as Layer;
    const elements = on.map((one) => ({ layer: 'words', box: boxOf(one) }) as never);
    const spots = greetingMarks(strip, elements).flatMap((mark) =>
      mark.kind === 'stroke' ? mark.spots : [],
    );
    const along = spots.map(({ x, y }) => (at[3] > at[2] ? y : x));
    expect(Math.min(...along)).toBeGreaterThan(from);
    expect(Math.max(...along)).toBeLessThan(to);
    // As large as the room lets it be, and never longer than 62 mm.
    const length = Math.max(...along) - Math.min(...along);
    const most = Math.min(0.72 * (to - from), (0.66 * 20) / 0.411, 62);
    expect(length / most).toBeGreaterThan(0.97);
    expect(length / most).toBeLessThan(1.03);
  });
});

describe('where words will be stamped', () => {
  const greeting = (box: Layout['card'] & { x: number; y: number }): Layer =>
    ({
      id: 'greeting',
      role: 'greeting',
      material: 'cardstock',
      paper: 'plain',
      box,
      shape: { kind: 'rectangle' },
    }) as unknown as Layer;
  const strokes = (layer: Layer, paint?: Paint): Stroke[] =>
    greetingMarks(layer, [], paint).flatMap((mark) => (mark.kind === 'stroke' ? [mark] : []));

  test.each(catalogue.map((layout) => [layout.id, layout] as const))(
    'the word for them stands on the strip of %s, on the card and on its drawing',
    (_, layout) => {
      const strips = layout.layers.filter(({ role }) => role === 'greeting');
      const words = cardMarks(layout, () => plain).filter(
        (mark) => mark.kind === 'stroke' && mark.spots.length > 100,
      );
      expect(words).toHaveLength(strips.length);
      const written = layoutDrawing(layout).match(/<path d="M[^Z"]{1000,}" fill="none"/g) ?? [];
      expect(written).toHaveLength(strips.length);
      for (const strip of strips)
        for (const { x, y } of strokes(strip).flatMap(({ spots }) => spots)) {
          expect(x).toBeGreaterThan(strip.box.x / 320);
          expect(x).toBeLessThan((strip.box.x + strip.box.width) / 320);
          expect(y).toBeGreaterThan(strip.box.y / 320);
          expect(y).toBeLessThan((strip.box.y + strip.box.height) / 320);
        }
    },
  );

  test('they run along the longer side of their strip', () => {
    const long = (width: number, height: number): readonly [number, number] => {
      const box = { x: 0, y: 0, width: 320 * width, height: 320 * height } as never;
      const spots = strokes(greeting(box)).flatMap((mark) => mark.spots);
      const reach = (of: number[]): number => Math.max(...of) - Math.min(...of);
      return [reach(spots.map(({ x }) => x)), reach(spots.map(({ y }) => y))];
    };
    const [across, high] = long(80, 15);
    expect(across).toBeGreaterThan(2 * high);
    expect(long(15, 80)[1]).toBeCloseTo(across, 6);
  });

  test('light on dark cardstock, dark on light, and with light of their own on a print', () => {
    const box = { x: 0, y: 0, width: 320 * 80, height: 320 * 15 } as never;
    const colours = (paint: Paint): string[] => [
      ...new Set(strokes(greeting(box), paint).map(({ colour }) => colour)),
    ];
    expect(colours({ kind: 'colour', hex: '#102030' })).toEqual(['#ffffff']);
    expect(colours({ kind: 'colour', hex: '#f4f1ea' })).toEqual(['#3a4246']);
    expect(colours(paper(0, 0, 0))).toEqual(['#ffffff', '#3a4246']);
  });
});

describe('the drawing of a layout', () => {
  test.each(catalogue.map((layout) => [layout.id, layout] as const))('%s', (_, layout) => {
    const svg = layoutDrawing(layout);
    expect(svg.startsWith('<svg xmlns')).toBe(true);
    expect(svg).not.toMatch(/NaN|undefined|Infinity|<text/);
  });

  test('two papers of one role have different hatches', () => {
    const four = catalogue.find(({ id }) => id === 'four-panes-us')!;
    const slopes = [
      ...layoutDrawing(four).matchAll(
        /<line x1="(\S+)" y1="(\S+)" x2="(\S+)" y2="(\S+)" stroke="#3a424699"/g,
      ),
    ].map(([, x1, y1, x2, y2]) =>
      Math.round((Math.atan2(Number(y2) - Number(y1), Number(x2) - Number(x1)) * 180) / Math.PI),
    );
    expect(new Set(slopes.map((slope) => ((slope % 180) + 180) % 180)).size).toBeGreaterThanOrEqual(
      4,
    );
  });
});
