import type { Ruler, Size } from '../lengths/length.ts';
import { parseSize } from '../lengths/parse-size.ts';
import { sizeSaid } from './said.ts';

/** The sheets that cardstock usually comes in: ANSI/ASME Y14.1 (A, 8 1/2 x 11 in) and ISO 216 (A4). */
export type StockPaper = 'letter' | 'a4';

const SIZES: Readonly<Record<StockPaper, Size>> = {
  letter: parseSize('8 1/2 x 11 in'),
  a4: parseSize('210 x 297 mm'),
};
const NAMES: Readonly<Record<StockPaper, string>> = { letter: 'Letter', a4: 'A4' };

/** The size of such a sheet; without a word of hers that on whose ruler it is whole. */
export function stockSize(paper: StockPaper | undefined, ruler: Ruler): Size {
  return SIZES[paper ?? usualOn(ruler)];
}

/** 'A4 (8 1/4 x 11 11/16 in)' on a ruler in inches, where its own size is not whole; '210 x 297 mm' on the other. */
export function stockSizeSaid(size: Size, ruler: Ruler): string {
  const said = sizeSaid(size, ruler);
  const other = usualOn(ruler) === 'a4' ? 'letter' : 'a4';
  const { width, height } = SIZES[other];
  return size.width === width && size.height === height ? `${NAMES[other]} (${said})` : said;
}

function usualOn(ruler: Ruler): StockPaper {
  return ruler === 'in' ? 'letter' : 'a4';
}
