import { describe, expect, test } from 'vitest';
import type { Mark } from '../../server/guide/drawing.ts';
import { guidePages } from '../../server/guide/guide-pages.ts';
import { catalogue } from '../../server/layouts/catalogue.ts';
import { guideWorld } from './world.ts';

function textsOf(marks: readonly Mark[]): string[] {
  return marks.flatMap((mark) =>
    mark.kind === 'group' ? textsOf(mark.marks) : mark.kind === 'words' ? [mark.text] : [],
  );
}

describe('the guide of a class set', () => {
  const ask = guideWorld(catalogue.slice(0, 3));
  const pages = (people: number) => guidePages({ ...ask, people, stack: 2 });

  test('has a label for each card of each person', () => {
    const labels = pages(8)
      .flatMap(({ marks }) => textsOf(marks))
      .filter((text) => /^Person \d of 8$/.test(text));
    expect(labels).toHaveLength(8 * 3);
    expect(new Set(labels).size).toBe(8);
  });

  test('says how many of each sheet to have; the guide for one person says nothing of people', () => {
    const page = pages(8).find(({ name }) => name === 'For 8 people')!;
    expect(textsOf(page.marks)).toContain('Sheet 1: 8. One pad has 1.');
    expect(pages(1).some(({ name }) => name.includes('people'))).toBe(false);
  });

  test('that would need too many labels is refused with what can be done', () => {
    expect(() => pages(201)).toThrow(/at most 600 cards/);
    expect(() => pages(200)).not.toThrow();
  });
});
