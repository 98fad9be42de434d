import type { LeftoverList } from '../../server/contract/leftovers.ts';
import type {
  CutStep,
  ShownSheet,
  SlotCuts,
  StockCuts,
} from '../../server/contract/plan-guides.ts';
import { pieceFor } from '../lengths/lengths.ts';
import type { PrintPaper, Ruler } from '../table/settings.ts';
import { guideWords } from '../words/guide.ts';
import type { Act, Picture, Stack, Step } from './step.ts';

/** A sheet of the pad with its cuts. */
export function paperStep(cuts: SlotCuts, stacks: readonly Stack[]): Step {
  const { slot, name, laying, follows, steps } = cuts;
  const id = `cut-${slot}`;
  const mine = stacks.filter(({ of }) => of.some((one) => one.slot === slot));
  const first = mine.filter(({ of }) => of[0]?.slot === slot);
  return {
    id,
    kind: 'paper',
    title: name,
    ...(follows !== null && { aside: guideWords.alike(follows) }),
    picture: pictureOf(cuts, guideWords.laid),
    lines: mine.length > first.length ? [laying, guideWords.inStacks] : [laying],
    acts: actsOf(id, steps),
    stacks: first,
  };
}

/** A sheet of the pad that stays whole, because all its pieces come out of parts that were kept. */
export function sparedStep(cuts: SlotCuts, ruler: Ruler, kept: LeftoverList): Step {
  const step = paperStep(cuts, []);
  const { slot, pieces } = cuts;
  return {
    ...step,
    title: guideWords.fromLeft(step.title),
    lines: [guideWords.spared],
    acts: pieces.map(({ card, layer, name, size, up }, at): Act => {
      const use = kept.pieces.find(
        (one) => one.slot === slot && one.card === card && one.layer === layer,
      );
      const part = kept.leftovers.find(({ id }) => id === use?.leftover);
      const whole =
        part === undefined ? '' : pieceFor(`${part.size.width} x ${part.size.height}`, ruler);
      return {
        id: `${step.id}-kept-${at + 1}`,
        number: at + 1,
        main: guideWords.fromPart(card, name, size),
        small: guideWords.outOfPart(whole, up),
        shown: null,
      };
    }),
  };
}

/** The sheets of a cardstock. Sheets of another size are cut otherwise, so that ticks do not pass to them: `size` tells them apart. */
export function stockSteps({ name, sheets }: StockCuts, people: number, size: PrintPaper): Step[] {
  return sheets.map((sheet): Step => {
    const id = `stock-${size}-${sheet.id}`;
    return {
      id,
      kind: 'cardstock',
      title: guideWords.cutStock(name, sheets.length > 1 ? sheet.numbers : []),
      picture: pictureOf(sheet, guideWords.laidStock),
      lines: people === 1 ? [sheet.laying] : [sheet.laying, guideWords.times(people)],
      acts: actsOf(id, sheet.steps),
      stacks: [],
    };
  });
}

function actsOf(step: string, steps: readonly CutStep[]): Act[] {
  return steps.map((cut) => ({ ...cut, id: `${step}-${cut.number}` }));
}

function pictureOf({ picture, drawing }: ShownSheet, alt: string): Picture {
  return { src: picture, alt, ...drawing };
}
