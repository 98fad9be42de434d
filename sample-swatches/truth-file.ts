import type { PhotoTruth } from './render-photo.ts';

/** What `truth.json` holds, and any folder of photos that is to be measured. */
export interface TruthFile {
  readonly about: string;
  readonly sheetMillimetres: number;
  readonly photos: readonly (PhotoOfTruth & PhotoTruth)[];
}

export interface PhotoOfTruth {
  readonly file: string;
  /** The pad whose sheets or supplies it shows. */
  readonly pad: string;
  readonly holds: 'sheets' | 'cardstock' | 'ink';
  /** Photos of sheets: which face is up, and which arrangement on the table. */
  readonly side: 'front' | 'back' | null;
  readonly arrangement: string | null;
}

/** JSON with numbers as short as they are true, one object of the innermost kind a line. */
export function legible(value: unknown): string {
  const short = JSON.stringify(
    value,
    (_key, held: unknown) => (typeof held === 'number' ? Number(held.toFixed(4)) : held),
    1,
  );
  const oneLine = (block: string): string => block.replace(/\s*\n\s*/g, ' ');
  return `${short.replace(/[[{][^[\]{}]*[\]}]/g, oneLine)}\n`;
}
