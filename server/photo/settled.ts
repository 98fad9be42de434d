import type { Quad } from '../geometry/points.ts';
import type { Candidate } from './find-sheets.ts';
import type { TableMetric } from './table-metric.ts';

/** What a quad settled to, in pixels of the large picture. */
export interface Settled {
  readonly corners: Quad<'photo'>;
  /** For each side, the part of it along which an edge was seen, from 0 to 1. */
  readonly borne: readonly number[];
  /** For each side, the part of it with table just outside. */
  readonly outside: readonly number[];
  /** How far its sides are off a sheet's size, at most. */
  readonly offSize: number;
  /** How much better its four edges fit than the next four: near 0 they are a guess. */
  readonly lead: number;
  /** Where it was laid by its size: how much better that is borne out there than at the next place, 0 to 1. */
  readonly leadBySize?: number;
  /** Where table was well seen beside some sides and not at all beside another, it may lie a little beside its sheet. */
  readonly isBeside?: boolean;
}

export interface SettledSheets {
  /** One for each rough outline. */
  readonly laid: readonly Settled[];
  /** Sheets that came out at places where one may lie, with which of these it was. */
  readonly added: readonly (Settled & { readonly place: number })[];
}

/** A rough outline on the preview. */
export type Rough = Pick<Candidate, 'corners' | 'byMotifs' | 'loose'>;

/** A rough outline in pixels of the large picture that is to be laid onto the edges beside it. */
export interface ToLay {
  readonly start: Quad<'photo'>;
  /** Part of a side within which its true place lies. */
  readonly reach: number;
  readonly metric: TableMetric | null;
  /** Part of a side by which it may be off its size before that counts like an edge half borne out. */
  readonly misfit: number;
  readonly lead: number;
}
