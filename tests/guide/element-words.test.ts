import { expect, test } from 'vitest';
import { catalogue } from '../../server/layouts/catalogue.ts';
import { formatLength } from '../../server/lengths/format-length.ts';
import { units } from '../../server/lengths/length.ts';
import { inWords, nameAmong } from '../../server/layouts/layer-names.ts';
import { parseLength } from '../../server/lengths/parse-length.ts';
import { elementWords } from '../../server/guide/element-words.ts';
import { guidePages } from '../../server/guide/guide-pages.ts';
import { guideOnScreen } from '../../server/guide/guide-on-screen.ts';
import { textOf } from './flat.ts';
import { guideWorld, layoutsOf } from './world.ts';

const [plain] = catalogue;
const box = {
  x: parseLength('1 1/2 in'),
  y: parseLength('1 in'),
  width: parseLength('1 in'),
  height: parseLength('3/4 in'),
};
const panel = plain!.layers.find(({ role }) => role === 'panel')!.id;
const layout = {
  ...plain!,
  elements: [
    { id: 'leaf', kind: 'die-cut', layer: panel, box },
    { id: 'sprig', kind: 'stamp', layer: panel, box },
  ] as const,
};

/** A place on the card, measured from the edge of the loose panel. */
function onPanel(way: 'x' | 'y', onCard: string): string {
  const { box: edge } = plain!.layers.find(({ id }) => id === panel)!;
  return formatLength(units(parseLength(onCard) - edge[way]), 'in');
}

test('what is stamped or cut by a die is told with its size and place', () => {
  expect(elementWords(layout, 'in')).toEqual([
    {
      element: 'leaf',
      kind: 'die-cut',
      main: 'Die cut: leaf, 1 x 3/4 in',
      small: `Cut it with its die out of a scrap of any cardstock that stands out there, and glue it on the ${panel}, 1 1/2 in from the left and 1 in from the top of the card.`,
      before: null,
    },
    {
      element: 'sprig',
      kind: 'stamp',
      main: 'Stamp: sprig, 1 x 3/4 in',
      small: `Stamp it on the ${panel}, ${onPanel('x', '1 1/2 in')} from the left and ${onPanel('y', '1 in')} from the top of the ${panel}. Let it dry before you glue.`,
      before: panel,
    },
  ]);
  expect(elementWords(plain!, 'in')).toEqual([]);
});

test('in print a stamp stands before its layer is glued, a die cut after all layers', () => {
  const ask = guideWorld([layout]);
  const card = guidePages(ask).find(({ name }) => name.startsWith('Card 1'))!;
  const text = textOf(card.marks);
  const at = (start: string): number => text.findIndex((line) => line.startsWith(start));
  expect(at('Stamp: sprig, 1 x 3/4 in')).toBeGreaterThan(-1);
  expect(at('Stamp: sprig')).toBeLessThan(at(`${inWords(panel)}, `));
  expect(at('Die cut: leaf')).toBeGreaterThan(at(`${inWords(layout.layers.at(-1)!.id)}, `));
  expect(guideOnScreen(ask).cards[0]!.elements.map(({ before }) => before)).toEqual([null, panel]);
});

test('a loose piece is stamped and shaped before the words tell to glue it', () => {
  const notes = guideOnScreen(guideWorld(layoutsOf('us'))).cards.flatMap(({ layers }) =>
    layers.map(({ note }) => note),
  );
  const first = notes.filter((note) => /before you glue it|let it dry/.test(note));
  expect(first.some((note) => note.startsWith('Stamp it and let it dry. Glue'))).toBe(true);
  for (const note of first)
    expect(note.search(/Glue (?:it|only)/)).toBeGreaterThan(
      note.search(/before you glue it|let it dry/),
    );
});

test('a number is said only where there are several of a kind', () => {
  const named = (first: string, ...others: string[]): string[] => {
    const stamps = [first, ...others].map(
      (id) => ({ id, kind: 'stamp', layer: panel, box }) as const,
    );
    return elementWords({ ...plain!, elements: stamps }, 'in').map(({ main }) => main);
  };
  expect(named('stamp-1')).toEqual(['Stamp, 1 x 3/4 in']);
  expect(named('stamp-1', 'stamp-2')).toEqual(['Stamp 1, 1 x 3/4 in', 'Stamp 2, 1 x 3/4 in']);
  expect(named('sprig-1', 'leaf')[0]).toBe('Stamp: sprig, 1 x 3/4 in');
  expect(nameAmong(['panel-1', 'strip-1', 'strip-2'], 'panel-1')).toBe('panel');
  expect(nameAmong(['panel-1', 'strip-1', 'strip-2'], 'strip-1')).toBe('strip 1');
  expect(nameAmong(['panel', 'panel-1'], 'panel-1')).toBe('panel 1');
  expect(nameAmong(['left-panel-1', 'panel-1'], 'panel-1')).toBe('panel');
  const only = {
    ...layout,
    layers: layout.layers.map((one) => (one.id === panel ? { ...one, id: `${panel}-1` } : one)),
    elements: [{ id: 'sprig', kind: 'stamp', layer: `${panel}-1`, box }] as const,
  };
  expect(elementWords(only, 'in')[0]!.small).toMatch(
    new RegExp(`^Stamp it on the ${panel}, .* of the ${panel}\\.`),
  );
});
