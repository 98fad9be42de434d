import type { Role } from '../layouts/layout.ts';

/** What one layer of one card is made of. */
export type Choice =
  | { readonly kind: 'paper'; readonly slot: string; readonly sheet: string; readonly side: string }
  | { readonly kind: 'supply'; readonly supply: string }
  | {
      readonly kind: 'wanted';
      readonly lab: { readonly l: number; readonly a: number; readonly b: number };
    };

export interface ChosenLayer {
  readonly layer: string;
  readonly role: Role;
  readonly choice: Choice;
}

export interface Reason {
  readonly layers: readonly string[];
  /** Whole sentences: of a weak pair what speaks against it first, of a good one what speaks for it. */
  readonly text: string;
  /** The weightiest of it in one sentence; plans that were kept before there was one have none. */
  readonly short?: string;
  readonly score: number;
}

export interface ChosenCard {
  /** Number in the batch, from 1. */
  readonly number: number;
  readonly layout: string;
  readonly layers: readonly ChosenLayer[];
  /** In [0, 1]. */
  readonly score: number;
  /** Why it is as it is, in up to three sentences. */
  readonly why: string;
  /** The same in one; plans that were kept before there was one have none. */
  readonly short?: string;
  /** The worst first. */
  readonly reasons: readonly Reason[];
}

/** Sheets to slots, sides to pieces, cardstock to mats and bases; with its value, its bound and its reasons. */
export interface Plan {
  readonly cards: readonly ChosenCard[];
  /** Which sheet each slot is cut from: slot id to sheet id. */
  readonly slots: Readonly<Record<string, string>>;
  /** Sum of the card scores. */
  readonly value: number;
  /** No plan on these slots that keeps her wishes, and the prints upright where they can be, is worth more. */
  readonly bound: number;
  readonly proven: boolean;
  readonly notes: readonly string[];
  /**
   * Which face of its sheet lies up while a slot is cut; left out where what a piece shows does not depend on it,
   * because it is not known where on the sides their colours lie.
   */
  readonly up?: FacesUp;
  /** The best plan that is known, where this one was taken for leaving other cards as they lay; and which cards it makes otherwise. */
  readonly otherwise?: Pick<Plan, 'slots' | 'value'> & { readonly cards: readonly number[] };
}

/** Slot id to the face of its sheet that lies up. */
export type FacesUp = Readonly<Record<string, 'front' | 'back'>>;

/** How she likes them: each in [-1, 1], 0 in the middle. */
export interface Taste {
  /** closely matched ... lively contrast */
  readonly contrast: number;
  /** calm ... busy */
  readonly busy: number;
  /** soft ... bold */
  readonly bold: number;
}

/** This paper (or side, or supply) on that layer of that card. */
export interface Pin {
  readonly card: number;
  readonly layer: string;
  readonly sheet?: string;
  readonly side?: string;
  readonly supply?: string;
}
