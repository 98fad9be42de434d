import type { CutStep, TrimmerStep, Yield } from '../cutting/cut-steps.ts';
import type { FinishingStep, Mark } from '../cutting/finishing-steps.ts';
import type { Slot } from '../cutting/piece.ts';
import type { Ruler } from '../lengths/length.ts';
import { layerSaid, lengthSaid, sizeSaid } from './said.ts';

/** A step as she reads it: what to set or mark, large, and what comes of it, small. */
export interface StepWords {
  readonly number: number;
  readonly main: string;
  readonly small: string;
}

export function stepWords(step: CutStep, slot: Slot, ruler: Ruler): StepWords {
  return step.kind === 'cut' ? cutWords(step, slot, ruler) : finishWords(step, slot, ruler);
}

function cutWords(step: TrimmerStep, slot: Slot, ruler: Ruler): StepWords {
  const down = step.way === 'vertical';
  const what = step.part === 'sheet' ? '' : ` of part ${step.part}`;
  const from = `${lengthSaid(step.at, ruler)} from the ${down ? 'left' : 'top'}${what}`;
  const hints = [step.turn ? 'Turn the paper.' : '', step.sameSetting ? 'Ruler stays.' : ''];
  const gives = [
    `${down ? 'Left' : 'Top'}: ${yieldSaid(step.first, slot, ruler)}.`,
    `${down ? 'Right' : 'Below'}: ${yieldSaid(step.second, slot, ruler)}.`,
  ];
  return {
    number: step.number,
    main: from,
    small: [...hints, ...gives].filter((part) => part !== '').join(' '),
  };
}

function yieldSaid(given: Yield, slot: Slot, ruler: Ruler): string {
  switch (given.kind) {
    case 'part':
      return `part ${given.name}`;
    case 'piece':
      return pieceSaid(given.piece, slot);
    case 'rest':
      return `left over, ${sizeSaid(given.size, ruler)}`;
  }
}

/** 'card 3 panel'. */
export function pieceSaid(id: string, slot: Slot): string {
  const piece = slot.pieces.find((one) => one.piece.id === id)?.piece;
  return piece === undefined ? id : `card ${piece.card} ${layerSaid(piece.layer)}`;
}

function finishWords(step: FinishingStep, slot: Slot, ruler: Ruler): StepWords {
  const piece = capital(pieceSaid(step.piece, slot));
  const { number } = step;
  if (step.kind === 'slant')
    return {
      number,
      main: `${piece}: slant`,
      small: `Its up at the top: mark ${markSaid(step.from, ruler)} and ${markSaid(step.to, ruler)}; cut from mark to mark.`,
    };
  const { shape } = step;
  switch (shape.kind) {
    case 'circle':
      return { number, main: `${piece}: round`, small: 'Cut the disc that just fits the piece.' };
    case 'rounded':
      return {
        number,
        main: `${piece}: corners`,
        small: `Round the four corners, radius ${lengthSaid(shape.radius, ruler)}.`,
      };
    case 'banner':
      return {
        number,
        main: `${piece}: notch`,
        small: `Right end: mark the middle ${lengthSaid(shape.notch, ruler)} in; cut to it from both right corners.`,
      };
  }
}

function markSaid({ corner, edge, distance }: Mark, ruler: Ruler): string {
  if (distance === 0) return `the ${corner} corner`;
  return `${lengthSaid(distance, ruler)} along the ${edge} edge from the ${corner} corner`;
}

function capital(text: string): string {
  return `${text.charAt(0).toUpperCase()}${text.slice(1)}`;
}
