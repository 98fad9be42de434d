import { expect, test } from 'vitest';
import { catalogue } from '../../server/layouts/catalogue.ts';
import { parseLength } from '../../server/lengths/parse-length.ts';
import { elementWords } from '../../server/guide/element-words.ts';
import { guidePages } from '../../server/guide/guide-pages.ts';
import { guideOnScreen } from '../../server/guide/guide-on-screen.ts';
import { textOf } from './flat.ts';
import { guideWorld } from './world.ts';

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

test('what is stamped or cut by a die is told with its size and place', () => {
  expect(elementWords(layout, 'in')).toEqual([
    {
      main: 'Die cut: leaf, 1 x 3/4 in',
      small: `Cut it with its die and glue it on the ${panel}, 1 1/2 in from the left and 1 in from the top of the card.`,
    },
    {
      main: 'Stamp: sprig, 1 x 3/4 in',
      small: `Stamp it on the ${panel}, 1 1/2 in from the left and 1 in from the top of the card. Let it dry before you glue.`,
    },
  ]);
  expect(elementWords(plain!, 'in')).toEqual([]);
});

test('in print and on the screen after the layers of its card', () => {
  const ask = guideWorld([layout]);
  const card = guidePages(ask).find(({ name }) => name === 'Card 1')!;
  expect(textOf(card.marks)).toContain('Stamp: sprig, 1 x 3/4 in');
  expect(guideOnScreen(ask).cards[0]!.elements).toHaveLength(2);
});
