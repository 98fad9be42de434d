import { describe, expect, test } from 'vitest';
import { allSaidColours, saidColour } from '../../server/colour/said-colour.ts';
import { saidIn } from '../../web/supplies/said-in.ts';

/** As the service gives them. */
const NAMES = allSaidColours().map(({ words }) => ({ name: words }));

describe('a colour typed in words', () => {
  test.each([
    ['as they are', (words: string) => words],
    ['in capitals', (words: string) => ` ${words.toUpperCase()} `],
    ['written as one word', (words: string) => words.replaceAll(' ', '')],
    ['with dashes', (words: string) => words.replaceAll(' ', '-')],
    ['with grey for gray', (words: string) => words.replaceAll('gray', 'grey')],
  ])('is on the page the one that the service takes them for, %s', (_, written) => {
    for (const { name } of NAMES)
      expect([name, saidIn(NAMES, written(name))?.name]).toEqual([
        name,
        saidColour(written(name))?.words,
      ]);
  });

  test('is none where no colour is called so', () => {
    for (const text of ['', 'moonlit', 'light', 'dark reddish oranges'])
      expect([text, saidIn(NAMES, text)]).toEqual([text, undefined]);
  });
});
