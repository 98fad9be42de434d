import { readFile } from 'node:fs/promises';
import type { Lab } from '../server/colour/lab.ts';
import type { TruthFile } from './truth-file.ts';

/** The photo whose stages are shown, the sheet that is followed through them, and what is printed on it. */
export interface ShownPhoto {
  readonly file: string;
  readonly sheetMillimetres: number;
  /** In reading order, from 0. */
  readonly follow: number;
  readonly printed: readonly Lab[];
}

const FILE = 'tidewrack-a-front.jpg';
const SIDE = 'sheet-1-front';

/** Takes the path of the truth file; in it the sheets stand in reading order. */
export async function shownPhoto(truthFile: string): Promise<ShownPhoto> {
  const { sheetMillimetres, photos } = JSON.parse(await readFile(truthFile, 'utf8')) as TruthFile;
  const { sheets } = photos.find(({ file }) => file === FILE)!;
  const follow = sheets.findIndex(({ side }) => side === SIDE);
  const printed = sheets[follow]!.palette.map(({ lab }) => lab);
  return { file: FILE, sheetMillimetres, follow, printed };
}
