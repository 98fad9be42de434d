import { toMillimetres } from '../lengths/length.ts';
import type { Layout } from '../layouts/layout.ts';
import type { Line, Mark, Spot } from './drawing.ts';

/** Where the card is folded, as a soft line on its base; for a gate, where the flaps meet; for a flap, its free edge. */
export function foldMarks({ card, fold }: Layout): Mark[] {
  const [width, height] = [toMillimetres(card.width), toMillimetres(card.height)];
  const down = (x: number): [Spot, Spot] => [
    { x, y: 0 },
    { x, y: height },
  ];
  const across = (y: number): [Spot, Spot] => [
    { x: 0, y },
    { x: width, y },
  ];
  const score = fold.scores[0];
  switch (fold.kind) {
    case 'none':
      return [];
    case 'side':
      return crease(down(0.5));
    case 'top':
    case 'tent':
      return crease(across(0.5));
    case 'flap':
      return [
        ...crease(down(0.5)),
        gap(down(score === undefined ? width / 2 : toMillimetres(score))),
      ];
    case 'gate': {
      const flap = score === undefined ? width / 2 : toMillimetres(score);
      return fold.scoreFrom === 'left'
        ? [...crease(down(0.5)), ...crease(down(width - 0.5)), gap(down(flap))]
        : [...crease(across(0.5)), ...crease(across(height - 0.5)), gap(across(flap))];
    }
  }
}

function crease([from, to]: [Spot, Spot]): Line[] {
  return [
    { kind: 'line', from, to, width: 0.9, colour: '#00000012' },
    { kind: 'line', from, to, width: 0.3, colour: '#00000022' },
  ];
}

function gap([from, to]: [Spot, Spot]): Line {
  return { kind: 'line', from, to, width: 0.35, colour: '#00000099' };
}
