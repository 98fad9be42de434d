import type { Length, Size } from '../lengths/length.ts';
import type { CutTree, Slot } from './piece.ts';
import { finishingSteps } from './finishing-steps.ts';
import type { FinishingStep } from './finishing-steps.ts';

/** What a cut leaves on one side of the blade. */
export type Yield =
  | { readonly kind: 'part'; readonly name: string }
  | {
      readonly kind: 'piece';
      readonly piece: string;
      /** The second of two triangles that are cut apart later. */
      readonly twin?: string;
    }
  | { readonly kind: 'rest'; readonly size: Size };

/** One stroke of the trimmer. */
export interface TrimmerStep {
  readonly kind: 'cut';
  /** From 1, in the order of the hands. */
  readonly number: number;
  /** The part that is cut: `sheet`, then parts A, B, C as they come. */
  readonly part: string;
  /** As the sheet lies on the page with its up upwards. */
  readonly way: 'vertical' | 'horizontal';
  /** What the ruler shows, from the left (vertical) or upper (horizontal) edge of the part. */
  readonly at: Length;
  /** True when the paper lies a quarter turned against the step before. */
  readonly turn: boolean;
  /** True when the ruler shows the same as in the step before: no measuring. */
  readonly sameSetting: boolean;
  /** The left or upper side, and the other. */
  readonly first: Yield;
  readonly second: Yield;
}

export type CutStep = TrimmerStep | FinishingStep;

type Cut = Extract<CutTree, { kind: 'cut' }>;

interface Waiting {
  readonly name: string;
  readonly cut: Cut;
}

/**
 * The cuts of a sheet in the order of the hands: the trimmer's cuts, then what is done to single
 * pieces (slants, notches, round corners).
 *
 * A part can be cut as soon as it lies free. Of the parts that do, the next is one that wants the
 * setting the ruler already shows, else one that lies the same way round, the latest first; so the
 * paper is turned and the ruler set as seldom as this order allows.
 */
export function cutSteps(slot: Slot): CutStep[] {
  const steps: TrimmerStep[] = [];
  const waiting: Waiting[] = [];
  let named = 0;
  const yieldOf = (tree: CutTree): Yield => {
    if (tree.kind !== 'cut') return tree;
    const name = letters(named++);
    waiting.push({ name, cut: tree });
    return { kind: 'part', name };
  };
  if (slot.cuts.kind === 'cut') waiting.push({ name: 'sheet', cut: slot.cuts });
  while (waiting.length > 0) {
    const last = steps.at(-1);
    const next = nextOf(waiting, last);
    waiting.splice(waiting.indexOf(next), 1);
    const { way, at } = next.cut;
    const [first, second] = [yieldOf(next.cut.first), yieldOf(next.cut.second)];
    const turn = last !== undefined && last.way !== way;
    const sameSetting = last?.at === at;
    const number = steps.length + 1;
    steps.push({ kind: 'cut', number, part: next.name, way, at, turn, sameSetting, first, second });
  }
  return [...steps, ...finishingSteps(slot, steps.length)];
}

/** How often the ruler is set for a list of steps. */
export function settingsOf(steps: readonly CutStep[]): number {
  return steps.filter((step) => step.kind === 'cut' && !step.sameSetting).length;
}

function nextOf(waiting: readonly Waiting[], last: TrimmerStep | undefined): Waiting {
  const latestFirst = [...waiting].reverse();
  return (
    latestFirst.find(({ cut }) => cut.way === last?.way && cut.at === last.at) ??
    latestFirst.find(({ cut }) => cut.way === last?.way) ??
    latestFirst.find(({ cut }) => cut.at === last?.at) ??
    latestFirst[0]!
  );
}

/** A, B ... Z, AA, AB ... in the order in which parts come free. */
function letters(count: number): string {
  const last = String.fromCharCode(65 + (count % 26));
  return count < 26 ? last : letters(Math.floor(count / 26) - 1) + last;
}
