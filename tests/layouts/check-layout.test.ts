import { describe, expect, it } from 'vitest';
import { checkLayout } from '../../server/layouts/check-layout.ts';
import type { Layout } from '../../server/layouts/layout.ts';
import { units } from '../../server/lengths/length.ts';
import { Refusal } from '../../server/refusals/refusal.ts';
import { card, corners, layer } from './worlds.ts';

const panel = layer('panel', '10 mm, 10 mm, 80 mm, 80 mm');

describe('a layout is refused with its reason', () => {
  it('lets a sound one pass', () => {
    expect(() => checkLayout(card('100 x 100 mm', [panel], 'side'))).not.toThrow();
  });

  it.each([
    [
      'leaves the card',
      [layer('wide', '30 mm, 0 mm, 80 mm, 20 mm')],
      'layers[1].box',
      /leaves it at the right by 10 mm/,
    ],
    [
      'is wholly hidden',
      [panel, layer('over', '0 mm, 0 mm, 100 mm, 90 mm')],
      'layers[1]',
      /"panel" is wholly hidden/,
    ],
    [
      'is too narrow',
      [layer('thread', '0 mm, 0 mm, 2 mm, 50 mm')],
      'layers[1].box',
      /at least 3 mm/,
    ],
    [
      'has an inward corner',
      [
        layer('dart', '0 mm, 0 mm, 40 mm, 40 mm', {
          shape: corners([0, 0], [40, 0], [10, 10], [0, 40]),
        }),
      ],
      'layers[1].shape',
      /inward corner/,
    ],
    [
      'runs anticlockwise',
      [layer('back', '0 mm, 0 mm, 40 mm, 40 mm', { shape: corners([0, 0], [0, 40], [40, 40]) })],
      'layers[1].shape',
      /clockwise/,
    ],
    [
      'goes round twice',
      [
        layer('star', '0 mm, 0 mm, 40 mm, 40 mm', {
          shape: corners([20, 0], [32, 40], [0, 15], [40, 15], [8, 40]),
        }),
      ],
      'layers[1].shape',
      /edge-to-edge/,
    ],
    [
      'does not fill its box',
      [layer('small', '0 mm, 0 mm, 40 mm, 40 mm', { shape: corners([0, 0], [30, 0], [0, 30]) })],
      'layers[1].shape',
      /all four sides/,
    ],
    [
      'is rounded too far',
      [
        layer('pill', '0 mm, 0 mm, 40 mm, 20 mm', {
          shape: { kind: 'rounded', radius: units(11 * 320) },
        }),
      ],
      'layers[1].shape',
      /half its width/,
    ],
    [
      'has a notch too deep',
      [
        layer('flag', '0 mm, 0 mm, 40 mm, 20 mm', {
          shape: { kind: 'banner', notch: units(40 * 320) },
        }),
      ],
      'layers[1].shape',
      /notch/,
    ],
    ['bears a name twice', [panel, panel], 'layers[2].id', /name of its own/],
  ])('when a layer %s', (_, layers, field, message) => {
    const refusal = refusalOf(card('100 x 100 mm', layers));
    expect(refusal.field).toBe(field);
    expect(refusal.message).toMatch(message);
    expect(refusal.mend).not.toBe('');
  });

  it('when there is no base as large as the card, or two', () => {
    const sound = card('100 x 100 mm', [panel]);
    expect(refusalOf({ ...sound, layers: [] }).field).toBe('layers[0]');
    expect(refusalOf({ ...sound, layers: [panel] }).field).toBe('layers[0]');
    const twoBases = [...sound.layers, { ...panel, id: 'second', role: 'base' as const }];
    expect(refusalOf({ ...sound, layers: twoBases }).field).toBe('layers[2].role');
  });

  it('when the score is not where the fold must be, and says where', () => {
    const sound = card('100 x 100 mm', [panel], 'side');
    const wrong = { ...sound, fold: { ...sound.fold, scores: [units(99 * 320)] } };
    expect(refusalOf(wrong).message).toContain('scored at 100 mm from the left');
  });
});

function refusalOf(layout: Layout): Refusal {
  try {
    checkLayout(layout);
  } catch (error) {
    if (error instanceof Refusal) return error;
    throw error;
  }
  throw new Error('nothing was refused');
}
