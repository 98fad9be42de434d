import { readdirSync, readFileSync } from 'node:fs';
import path from 'node:path';
import { fileURLToPath } from 'node:url';
import { h } from 'preact';
import { expect, test } from 'vitest';
import { linesOf } from '../../server/guide/letters.ts';
import { unbroken } from '../../web/lengths/unbroken.ts';
import '../../web/table/whole-figures.ts';

const WORDS = fileURLToPath(new URL('../../web/words', import.meta.url));
/** A figure in the source of a sentence, put in or written out, with what stands behind it. */
const FIGURE = /(?:\$\{[^{}]*\}|\d) ([^\s`'"${}()|&?:=+*<>]+)/g;
/** Signs of units as the SI writes them (BIPM, The International System of Units, 9th ed.), and those of the trade. */
const SIGN =
  /^(?:%|‰|°|µm|mm|cm|dm|m|km|in|ft|mg|g|kg|oz|lb|ms|s|h|kB|MB|GB|TB|dpi|ppi|px|pt|MP|K|°C)$/;

const files = readdirSync(WORDS).map((name) => [name, path.join(WORDS, name)] as const);

test.each(files)('in the words of %s every unit stays with its figure', (_, file) => {
  const text = readFileSync(file, 'utf8');
  for (const [, behind] of text.matchAll(FIGURE)) {
    const sign = behind!.replace(/[.,;:!…]+$/, '');
    if (!SIGN.test(sign)) continue;
    expect(unbroken(`7 ${sign}`), `${sign} behind a figure`).toBe(`7\u00a0${sign}`);
  }
});

test.each(['12 %', '3 1/4 in', '6 × 6 in', '108 mm', '14.6 cm', '1.5 GB', '2 3/16 in.', '27 %)'])(
  '%s is one word on the screen and in print, whatever breaks the line',
  (figure) => {
    const shown = unbroken(`about ${figure} of it`).split(' ');
    expect(shown).toHaveLength(figure.includes('×') ? 5 : 4);
    const narrow = linesOf(`about ${figure.replace('×', 'x')} of it`, 1, 4);
    if (!figure.includes('GB')) expect(narrow).toHaveLength(4);
  },
);

test('a word that only begins like a unit may stand on the next line', () => {
  expect(unbroken('sheets 3 into 4, 5 inner, 6 matches')).toBe(
    'sheets 3 into 4, 5 inner, 6 matches',
  );
});

test('whatever is put on the page has its figures whole, also what the service says', () => {
  const said = h('p', null, 'share teal, 41 % and 18 %', ['repeats every 2 3/16 in'], 7);
  expect(said.props.children).toEqual([
    'share teal, 41\u00a0% and 18\u00a0%',
    ['repeats every 2\u00a03/16\u00a0in'],
    7,
  ]);
  expect(h('p', null, 'on 3 sides').props.children).toBe('on 3 sides');
});

test('a size breaks before its x', () => {
  const said = unbroken('Greeting mat, 3 1/4 x 1 3/4 in: glue it 12 mm from card 3 in the middle');
  expect(said.split(' ')).toContain('3\u00a01/4');
  expect(said.split(' ')).toContain('x\u00a01\u00a03/4\u00a0in:');
  expect(said.split(' ')).toContain('12\u00a0mm');
});

test('in print a number stays with what it counts', () => {
  const lines = linesOf(
    'Cut the part left of cut 2. Top: keep it for cut 7. Card 12, Sheet 3.',
    1,
    4,
  );
  for (const pair of ['cut 2.', 'cut 7.', 'Card 12,', 'Sheet 3.']) expect(lines).toContain(pair);
  expect(lines).toContain('part');
});
