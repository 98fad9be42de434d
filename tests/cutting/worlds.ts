import type { Piece } from '../../server/cutting/piece.ts';
import { usualSettings } from '../../server/cutting/settings.ts';
import type { CutSettings } from '../../server/cutting/settings.ts';
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
