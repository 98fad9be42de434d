import fc from 'fast-check';
import type { Piece } from '../../server/cutting/piece.ts';
import { usualSettings } from '../../server/cutting/settings.ts';
import type { CutSettings } from '../../server/cutting/settings.ts';
import { units } from '../../server/lengths/length.ts';
import type { Size } from '../../server/lengths/length.ts';
import { parseSize } from '../../server/lengths/parse-size.ts';

/** A rectangular piece in a few words: `piece(1, 'panel', '4 x 5 1/4 in')`. */
export function piece(card: number, layer: string, size: string, more: Partial<Piece> = {}): Piece {
  return {
    id: `card-${card}-${layer}`,
    card,
    layer,
    role: 'panel',
    size: parseSize(size),
    shape: { kind: 'rectangle' },
    paper: layer,
    ...more,
  };
}

export const INCHES: CutSettings = { ...usualSettings('in'), steps: 30 };

export interface Batch {
  readonly sheet: Size;
  readonly pieces: readonly Piece[];
  readonly settings: CutSettings;
}

/** Batches with cards that share papers, pieces that keep their up, on square and oblong sheets. */
export const anyBatch: fc.Arbitrary<Batch> = fc
  .record({
    ruler: fc.constantFrom('in' as const, 'mm' as const),
    across: fc.integer({ min: 16, max: 48 }),
    down: fc.integer({ min: 16, max: 48 }),
    keepUp: fc.boolean(),
    apart: fc.boolean(),
    seed: fc.integer({ min: 1, max: 1000 }),
    parts: fc.array(
      fc.record({
        card: fc.integer({ min: 1, max: 5 }),
        paper: fc.constantFrom('a', 'b', 'c'),
        across: fc.double({ min: 0.05, max: 0.55, noNaN: true }),
        down: fc.double({ min: 0.05, max: 0.55, noNaN: true }),
        keepUp: fc.boolean(),
      }),
      { minLength: 1, maxLength: 14 },
    ),
  })
  .map(({ ruler, across, down, keepUp, apart, seed, parts }) => {
    const step = ruler === 'in' ? 2032 : 1280;
    const side = (share: number, of: number): number => Math.max(1, Math.round(share * of)) * step;
    const seen = new Set<string>();
    const pieces = parts.map((part, index): Piece => {
      const key = `${part.card} ${part.paper}`;
      const paper = apart && seen.has(key) ? `${part.paper}${index}` : part.paper;
      seen.add(key);
      return {
        ...piece(part.card, `layer-${index}`, '1 x 1 in', { paper, keepUp: part.keepUp }),
        size: { width: units(side(part.across, across)), height: units(side(part.down, down)) },
      };
    });
    const sheet = { width: units(across * step), height: units(down * step) };
    return { sheet, pieces, settings: { ruler, keepUp, apart, seed, steps: 6 } };
  });
