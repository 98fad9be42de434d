import { seedFor } from '../chance.ts';
import type { PaperSide } from '../paper/paper-side.ts';
import type { PaperPad, PaperSheet } from './paper-pad.ts';
import { SHEET } from './paper-pad.ts';

type Face = Omit<PaperSide, 'id'>;

/** A print by name; the same name and repeat within a pad is the same pattern. */
function print(
  drawing: string,
  repeat: number,
  colours: readonly string[],
  stock: PaperSide['stock'] = 'smooth',
): Face {
  const seed = seedFor(SERIES, drawing, repeat);
  const cut = seedFor(seed, ...colours);
  const cutAt = [(cut % 97) / 97, (cut % 89) / 89] as const;
  return { design: { kind: 'print', drawing, seed, repeat, cutAt }, colours, stock };
}

function wash(texture: 'watercolour' | 'linen', colours: readonly string[]): Face {
  return {
    design: { kind: 'wash', texture, seed: seedFor(SERIES, ...colours) },
    colours,
    stock: 'smooth',
  };
}

const SERIES = 12;

function bound(name: string, faces: readonly (readonly [front: Face, back: Face])[]): PaperPad {
  const sheets = faces.map(([front, back], index): PaperSheet => ({
    front: { id: `sheet-${index + 1}-front`, ...front },
    back: { id: `sheet-${index + 1}-back`, ...back },
  }));
  return { name, sheet: SHEET, sheets };
}

export const KELP = '#6b7136';
export const CORAL = '#e5735c';
export const TEAL = '#155862';
export const SAND = '#e6d2a8';
export const SHELL = '#f8ede2';
export const SLATE = '#5f7080';
export const KRAFT = '#b98f63';

/** The shore after a storm: the pad of the demonstration. */
export const tidewrack = bound('Tidewrack', [
  [print('meadow', 56, [SHELL, CORAL, SLATE, KELP, SAND]), print('awning', 12.7, [SHELL, CORAL])],
  [print('kelp', 50.8, [TEAL, SAND, KELP, CORAL]), print('dots', 19.05, [SAND, TEAL, CORAL])],
  [
    print('harbour', 60, [SAND, CORAL, TEAL, SHELL, KELP]),
    print('stripes', 30.48, [SHELL, SLATE, CORAL, SAND]),
  ],
  [wash('watercolour', ['#cfe0dc', '#93b9b9', '#5e949b']), print('letter', 76.2, [SHELL, SLATE])],
  [
    print('shells', 50.8, [KRAFT, SHELL, CORAL, TEAL], 'kraft'),
    print('gingham', 12.7, [SHELL, '#b5b684', KELP]),
  ],
  [
    print('meadow', 56, [TEAL, SAND, CORAL, KELP, SHELL]),
    print('pebbles', 50.8, [SHELL, SLATE, SAND, KELP]),
  ],
  [
    print('scallops', 20.32, [SHELL, TEAL, SLATE, SAND]),
    print('dots', 19.05, [CORAL, SHELL, SAND]),
  ],
  [print('gingham', 12.7, [SHELL, '#f0b3a0', CORAL]), print('sprigs', 25.4, [SAND, KELP, CORAL])],
  [print('kelp', 50.8, [SHELL, KELP, SLATE, CORAL]), print('trellis', 25.4, [SLATE, SHELL, SAND])],
  [
    wash('linen', ['#f0e2c4', '#e2cda2', '#cfb582']),
    print('shoal', 30.48, [SHELL, SLATE, CORAL, TEAL]),
  ],
  [
    print('meadow', 56, [SAND, SHELL, CORAL, KELP, TEAL]),
    print('swell', 30.48, [SHELL, TEAL, SLATE, SAND]),
  ],
  [
    print('scallops', 20.32, [SAND, CORAL, SHELL, KELP]),
    print('dashes', 40, [SLATE, SHELL, CORAL, SAND]),
  ],
]);

const [RUSSET, HONEY, LEAF, CREAM, PLUM, BARK, BLUSH] = [
  '#b4472b',
  '#e3a63f',
  '#5d7c3b',
  '#fbf2df',
  '#6a3450',
  '#6b4c37',
  '#f2cfb2',
] as const;

/** An orchard in October. */
export const windfall = bound('Windfall', [
  [
    print('fruit', 50.8, [CREAM, RUSSET, HONEY, LEAF, BARK]),
    print('gingham', 15.24, [CREAM, '#e0a48c', RUSSET]),
  ],
  [
    print('berries', 38.1, [BLUSH, PLUM, LEAF, CREAM]),
    print('stripes', 25.4, [CREAM, HONEY, RUSSET, LEAF]),
  ],
  [
    print('leaves', 50.8, [CREAM, LEAF, RUSSET, BARK]),
    print('dots', 15.24, [RUSSET, CREAM, HONEY]),
  ],
  [print('fruit', 50.8, [PLUM, HONEY, RUSSET, LEAF, CREAM]), print('awning', 19.05, [CREAM, LEAF])],
  [
    wash('watercolour', ['#f7dfae', '#ecc27a', '#dca14e']),
    print('sprigs', 30.48, [CREAM, LEAF, RUSSET]),
  ],
  [print('peony', 66, [BLUSH, RUSSET, HONEY, LEAF]), print('dots', 15.24, [LEAF, CREAM, HONEY])],
]);

const [MIDNIGHT, INDIGO, MOON, LILAC, EMBER, MIST] = [
  '#1c2547',
  '#3f4f8f',
  '#f3e8c8',
  '#b8a8d2',
  '#db8650',
  '#d3dae4',
] as const;

/** A clear night, late. */
export const nightjar = bound('Nightjar', [
  [
    print('stars', 45, [MIDNIGHT, MOON, LILAC, MIST]),
    print('zigzag', 19.05, [MIST, INDIGO, LILAC]),
  ],
  [print('clouds', 45, [INDIGO, MIST, LILAC, MOON]), print('dots', 25.4, [MOON, INDIGO, EMBER])],
  [print('orbits', 50.8, [MIDNIGHT, LILAC, EMBER, MOON]), print('awning', 15.24, [MIST, MIDNIGHT])],
  [
    print('stars', 45, [LILAC, MIDNIGHT, MOON, INDIGO]),
    print('hatching', 16.51, [MOON, INDIGO, LILAC]),
  ],
  [
    wash('watercolour', ['#a9b3d8', '#7683b8', '#505f9c']),
    print('orbits', 50.8, [MOON, INDIGO, EMBER, MIDNIGHT]),
  ],
  [
    print('harlequin', 30.48, [MIST, MIDNIGHT, LILAC, EMBER]),
    print('letter', 63.5, [MOON, INDIGO]),
  ],
]);
