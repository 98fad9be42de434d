import { describe, expect, it } from 'vitest';
import { checkScheme } from '../../server/cutting/check-scheme.ts';
import { cutScheme } from '../../server/cutting/cut-scheme.ts';
import { piecesOf } from '../../server/cutting/pieces-of.ts';
import { usualSettings } from '../../server/cutting/settings.ts';
import { catalogue } from '../../server/layouts/catalogue.ts';
import { parseSize } from '../../server/lengths/parse-size.ts';

describe('designs whose pieces fill whole sheets', () => {
  it.each([
    ['wide-over-two-us', '6 x 6 in', 6, 3],
    ['square-over-band-us', '6 x 6 in', 12, 4],
    ['panel-above-bar-us', '6 x 6 in', 12, 4],
    ['wide-over-two-a6', '150 x 150 mm', 6, 3],
    ['square-over-band-a6', '150 x 150 mm', 12, 4],
    ['panel-above-bar-a6', '150 x 150 mm', 12, 4],
  ] as const)('%s on %s: %i cards from %i sheets', (id, size, count, sheets) => {
    const layout = catalogue.find((one) => one.id === id)!;
    const cards = Array.from({ length: count }, (_, at) => ({ number: at + 1, layout }));
    const { patterned } = piecesOf(cards);
    const sheet = parseSize(size);
    const settings = usualSettings(id.endsWith('us') ? 'in' : 'mm');
    const scheme = cutScheme(patterned, sheet, settings);
    expect(checkScheme(patterned, scheme, settings)).toEqual([]);
    expect(scheme.slots).toHaveLength(sheets);
    expect(scheme.proven).toBe(true);
    const used = patterned.reduce((sum, one) => sum + one.size.width * one.size.height, 0);
    expect(used / (sheets * sheet.width * sheet.height)).toBeGreaterThanOrEqual(0.95);
  });
});
