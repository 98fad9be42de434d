import type { CutStep, PlanGuide } from '../../server/contract/plan-guides.ts';
import type { ClassSet } from '../../server/contract/class-sets.ts';
import type { NumberedSheet } from './number-step.ts';

/** One thing to do at the table: a sheet to cut, a card to build. */
export interface Step {
  readonly id: string;
  readonly kind: 'number' | 'before' | 'paper' | 'cardstock' | 'card' | 'left';
  readonly title: string;
  /** Why it stands here among all steps, where that asks for a word. */
  readonly aside?: string;
  readonly picture: Picture | null;
  readonly lines: readonly string[];
  /** What the hands do for it, one after the other. */
  readonly acts: readonly Act[];
  /** For several people: the stacks in which this sheet is cut; none for one person. */
  readonly stacks: readonly Stack[];
  /** The sheets that get their numbers; left out for other steps. */
  readonly sheets?: readonly NumberedSheet[];
  /** What the batch takes of cardstock and ink; left out for other steps, and where it is cut for several people. */
  readonly takes?: PlanGuide['takes'];
}

/** A drawing; its size is in the units in which places on it are given. */
export interface Picture {
  readonly src: string;
  readonly alt: string;
  readonly width: number;
  readonly height: number;
}

/** A stroke of the trimmer, the finish of a piece, a layer to glue, or what is stamped or cut with a die. */
export interface Act {
  readonly id: string;
  readonly number: number;
  readonly main: string;
  readonly small: string;
  readonly shown: Shown | null;
  /** What of a card it is; left out for cuts. */
  readonly part?: 'layer' | 'stamp' | 'die-cut';
}

/** What is shown of an act: a cut, a finish, a layer or a stamp on the card, or the flat base with its scores. */
export type Shown =
  | CutStep['shown']
  | { readonly kind: 'layer'; readonly outline: readonly Spot[] }
  | {
      readonly kind: 'base';
      /** Colour of its cardstock; null where it is none. */
      readonly hex: string | null;
      readonly flat: { readonly width: number; readonly height: number };
      readonly from: 'left' | 'top';
      readonly scores: readonly { readonly at: number; readonly said: string }[];
    };

export interface Spot {
  readonly x: number;
  readonly y: number;
}

export interface Stack {
  readonly id: string;
  readonly number: number;
  readonly of: ClassSet['stacks'][number]['of'];
}
