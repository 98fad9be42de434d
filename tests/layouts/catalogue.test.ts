import { describe, expect, it } from 'vitest';
import { catalogue } from '../../server/layouts/catalogue.ts';
import { checkLayout } from '../../server/layouts/check-layout.ts';
import { envelopeFor } from '../../server/layouts/envelopes.ts';
import { foldOf } from '../../server/layouts/folds.ts';
import { papersOf } from '../../server/layouts/papers-of.ts';
import { formatLength, formatSize } from '../../server/lengths/format-length.ts';
import type { Ruler } from '../../server/lengths/length.ts';
import { parseSize } from '../../server/lengths/parse-size.ts';
import { isOnRuler } from '../../server/lengths/ruler.ts';

const US = formatSize(parseSize('4 1/4 x 5 1/2 in'), 'in');

describe('our catalogue', () => {
  const upright = (ruler: Ruler) => (size: string) =>
    catalogue.filter(({ card }) =>
      [
        formatSize(card, ruler),
        formatSize({ width: card.height, height: card.width }, ruler),
      ].includes(size),
    );

  it('has at least twelve designs each for US and A6 cards, some square ones, 24 or more in all', () => {
    expect(upright('in')(US).length).toBeGreaterThanOrEqual(12);
    expect(upright('mm')('105 x 148 mm').length).toBeGreaterThanOrEqual(12);
    expect(upright('mm')('130 x 130 mm').length).toBeGreaterThanOrEqual(6);
    expect(catalogue.length).toBeGreaterThanOrEqual(24);
    expect(new Set(catalogue.map((layout) => layout.id)).size).toBe(catalogue.length);
    expect(new Set(catalogue.map((layout) => layout.name)).size).toBe(catalogue.length);
  });

  it.each(catalogue.map((layout) => [layout.id, layout] as const))(
    '%s can be made, carries a greeting, and takes one to four papers',
    (_, layout) => {
      expect(() => checkLayout(layout)).not.toThrow();
      expect(layout.layers.filter((layer) => layer.role === 'greeting')).toHaveLength(1);
      expect(papersOf(layout).length).toBeGreaterThanOrEqual(1);
      expect(papersOf(layout).length).toBeLessThanOrEqual(4);
    },
  );

  it.each(catalogue.map((layout) => [layout.id, layout] as const))(
    '%s has only lengths that stand on its ruler',
    (id, layout) => {
      const ruler = id.endsWith('-us') ? 'in' : 'mm';
      const { flat, scores } = layout.fold;
      const boxes = layout.layers.map((layer) => layer.box);
      const lengths = boxes.flatMap(({ x, y, width, height }) => [x, y, width, height]);
      const off = [...lengths, flat.width, flat.height, ...scores].filter(
        (length) => !isOnRuler(length, ruler),
      );
      expect(off).toEqual([]);
    },
  );

  it('has a slanted strip, a split panel, a gate fold, round and notched pieces among them', () => {
    const shapes = new Set(
      catalogue.flatMap((layout) => layout.layers.map((layer) => layer.shape.kind)),
    );
    expect([...shapes]).toEqual(
      expect.arrayContaining(['rectangle', 'corners', 'circle', 'banner']),
    );
    const kinds = new Set(catalogue.map((layout) => layout.fold.kind));
    expect([...kinds].sort()).toEqual(['flap', 'gate', 'side', 'tent', 'top']);
  });

  it('leaves 1/8 in all round: a 4 x 5 1/4 in panel on the US card (common practice, no source)', () => {
    const panel = catalogue
      .find((layout) => layout.id === 'waistband-us')!
      .layers.find((layer) => layer.id === 'panel')!;
    expect(formatSize(panel.box, 'in')).toBe('4 x 5 1/4 in');
    expect(formatLength(panel.box.x, 'in')).toBe('1/8 in');
  });
});

describe('folds', () => {
  it('scores a gate 2 3/4 in from each end of a 4 1/4 x 11 in strip (common practice, no source)', () => {
    const gate = foldOf('gate', parseSize('4 1/4 x 5 1/2 in'), 'top');
    expect(formatSize(gate.flat, 'in')).toBe('4 1/4 x 11 in');
    expect(gate.scores.map((score) => formatLength(score, 'in'))).toEqual(['2 3/4 in', '8 1/4 in']);
    expect(gate.scoreFrom).toBe('top');
  });

  it('opens an A6 card from a sheet of A5, half of A4 (ISO 216)', () => {
    expect(formatSize(foldOf('side', parseSize('105 x 148 mm')).flat, 'mm')).toBe('210 x 148 mm');
    expect(formatSize(foldOf('top', parseSize('105 x 148 mm')).flat, 'mm')).toBe('105 x 296 mm');
  });
});

describe('envelopes', () => {
  it.each([
    ['4 1/4 x 5 1/2 in', 'A2 (US)'],
    ['5 1/2 x 4 1/4 in', 'A2 (US)'],
    ['105 x 148 mm', 'C6'],
    ['130 x 130 mm', 'square 14 cm'],
    ['5 x 7 in', 'A7 (US)'],
  ])('put a %s card into %s', (size, name) => {
    expect(envelopeFor(parseSize(size))?.name).toBe(name);
  });

  it('know none for a card larger than all', () => {
    expect(envelopeFor(parseSize('12 x 12 in'))).toBeNull();
  });
});
