import type { PaperSide } from '../paper/paper-side.ts';

export interface PaperSheet {
  readonly front: PaperSide;
  readonly back: PaperSide;
}

export interface PaperPad {
  readonly name: string;
  /** Side of a sheet in millimetres. */
  readonly sheet: number;
  readonly sheets: readonly PaperSheet[];
}

/** 6 in. */
export const SHEET = 152.4;
