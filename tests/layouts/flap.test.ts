import { describe, expect, it } from 'vitest';
import { foldSaid } from '../../server/guide/fold-words.ts';
import { gluingSaid } from '../../server/guide/gluing.ts';
import { checkLayout } from '../../server/layouts/check-layout.ts';
import { foldOf } from '../../server/layouts/folds.ts';
import { parseSize } from '../../server/lengths/parse-size.ts';
import { card, layer } from './worlds.ts';

const SIZE = '4 1/4 x 5 1/2 in';

describe('a flap cut free beside the fold', () => {
  it('takes a sheet one and a half times as wide, scored at half the card (half of 4 1/4 is 2 1/8)', () => {
    const { flat, scores, scoreFrom } = foldOf('flap', parseSize(SIZE));
    expect(flat).toEqual(parseSize('6 3/8 x 5 1/2 in'));
    expect([scores, scoreFrom]).toEqual([[parseSize('2 1/8 x 1 in').width], 'left']);
    const said = foldSaid(card(SIZE, [], 'flap'), 'in');
    expect(said).toMatch(/6 3\/8 x 5 1\/2 in, score it 2 1\/8 in from the left edge, and fold/);
  });

  it('is checked like any fold', () => {
    const sound = card(SIZE, [layer('band', '1/4 in, 1 in, 3 3/4 in, 2 in')], 'flap');
    expect(() => checkLayout(sound)).not.toThrow();
    const wide = { ...sound, fold: { ...sound.fold, flat: parseSize('8 1/2 x 5 1/2 in') } };
    expect(() => checkLayout(wide)).toThrow(/6 3\/8 in x 5 1\/2 in|6 3\/8 x 5 1\/2 in/);
  });

  it('is not glued shut by a layer that lies across its free edge', () => {
    const band = layer('band', '1/4 in, 1 in, 3 3/4 in, 2 in');
    const tag = layer('tag', '1/4 in, 1 in, 1 in, 2 in');
    expect(gluingSaid(card(SIZE, [band], 'flap'), band, 'in')).toMatch(
      /only its left half, to the left flap.*stays loose/,
    );
    expect(gluingSaid(card(SIZE, [tag], 'flap'), tag, 'in')).not.toMatch(/loose/);
    expect(gluingSaid(card(SIZE, [band], 'side'), band, 'in')).not.toMatch(/loose/);
  });
});
