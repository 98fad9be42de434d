import fc from 'fast-check';
import { expect, test } from 'vitest';
import { shownAs } from '../../server/http/file-name.ts';

test('a file is called by its parts, plain and in the letters of its language', () => {
  expect(shownAs(['Tidewrack', '12 cards', '2026-12-01'], 'pdf')).toBe(
    `inline; filename="Tidewrack, 12 cards, 2026-12-01.pdf"; filename*=UTF-8''Tidewrack%2C%2012%20cards%2C%202026-12-01.pdf`,
  );
  expect(shownAs(['Kvítí €', '1 card'], 'pdf')).toBe(
    `inline; filename="Kviti _, 1 card.pdf"; filename*=UTF-8''Kv%C3%ADt%C3%AD%20%E2%82%AC%2C%201%20card.pdf`,
  );
});

test('a long name of a pad gives way to its cards and day', () => {
  const pad = 'Papers from the spring sale, second half, flowers and stripes';
  expect(shownAs([pad, '12 cards', '2026-12-01'], 'pdf')).toContain(
    'filename="Papers from the spring sale, second ha, 12 cards, 2026-12-01.pdf"',
  );
});

test('no name breaks the header or leaves its folder', () => {
  fc.assert(
    fc.property(
      fc.array(fc.string({ unit: 'binary' }), { minLength: 1, maxLength: 3 }),
      (parts) => {
        const header = shownAs(parts, 'pdf');
        // RFC 6266, section 4.1, with the letters of RFC 8187, section 3.2.1.
        const match =
          /^inline; filename="([\u0020-\u007e]*)"; filename\*=UTF-8''([A-Za-z0-9%._~!#$&+^`|-]*)$/.exec(
            header,
          );
        expect(match).not.toBeNull();
        expect(match![1]).not.toMatch(/["\\/:]/);
        expect(decodeURIComponent(match![2]!)).not.toMatch(/[\\/:"]/);
        expect(header.length).toBeLessThan(1000);
      },
    ),
  );
});
