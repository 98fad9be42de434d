import type { Words } from './drawing.ts';
import { CAPITAL, plainWidth } from './letter-widths.ts';

/** A stretch of letters of one size, placed from its left end. */
export interface Run {
  readonly text: string;
  readonly x: number;
  readonly y: number;
  readonly size: number;
}

/** Size of the numerals of a fraction beside the text. */
const SMALL = 0.76;
/** Gap between a whole number and its fraction, in heights of the font. */
const THIN = 0.1;
/** How far the numerals reach under the slash. */
const TUCK = 0.06;

const FRACTION = /(\d+ )?(\d+)\/(\d+)/g;

/**
 * Breaks words into runs: fractions (`4 1/4`) are set as fractions, since the font lacks most of them,
 * and `x` between two sizes becomes a times sign.
 */
export function runsOf(words: Words): Run[] {
  const { runs, width } = laid(words);
  const start = words.align === 'right' ? -width : words.align === 'middle' ? -width / 2 : 0;
  return runs.map((run) => ({ ...run, x: words.x + start + run.x, y: words.y + run.y }));
}

/** Width in mm of a text as it is set, fractions and all. */
export function widthOf(text: string, size: number, bold = false): number {
  return laid({ text, size, bold }).width;
}

function laid({ text, size, bold = false }: Pick<Words, 'text' | 'size' | 'bold'>): {
  runs: Run[];
  width: number;
} {
  const shown = text.replaceAll(/(?<=\d(?: in| mm| cm)?) x (?=\d)/g, ' × ');
  const runs: Run[] = [];
  let x = 0;
  const put = (part: string, scale = 1, raised = 0): void => {
    if (part === '') return;
    runs.push({ text: part, x, y: -raised * size, size: scale * size });
    x += plainWidth(part, scale * size, bold);
  };
  let done = 0;
  for (const found of shown.matchAll(FRACTION)) {
    put(shown.slice(done, found.index));
    const [all, whole, over, under] = found;
    if (whole !== undefined) {
      put(whole.trimEnd());
      x += THIN * size;
    }
    put(over!, SMALL, (1 - SMALL) * CAPITAL);
    x -= TUCK * size;
    put('/');
    x -= TUCK * size;
    put(under!, SMALL);
    done = found.index + all.length;
  }
  put(shown.slice(done));
  return { runs, width: x };
}

/**
 * Lines are broken between words, not inside a length, a size or a share (`4 1/4 x 5 in` stays together), and a
 * number stays with what it counts: `cut 7` is no cut and a 7.
 */
const GAP =
  /(?<!\sx)(?<!\b(?:cut|card|sheet)(?=\s+\d))(?:\s+(?!\d+\/\d|x\s\d|(?:in|mm|cm)\b|%)|(?<!\d)\s+(?=(?:in|mm|cm)\b))/i;

/** Breaks a text into lines of at most a width in mm; a word longer than a line stands alone. */
export function linesOf(text: string, width: number, size: number, bold = false): string[] {
  const lines: string[] = [];
  let line = '';
  for (const word of text.split(GAP)) {
    const longer = line === '' ? word : `${line} ${word}`;
    if (line !== '' && widthOf(longer, size, bold) > width) {
      lines.push(line);
      line = word;
    } else line = longer;
  }
  return line === '' ? lines : [...lines, line];
}

/** Cuts a text that is too long for its place and ends it with dots. */
export function shortened(text: string, width: number, size: number, bold = false): string {
  if (widthOf(text, size, bold) <= width) return text;
  let kept = Array.from(text);
  while (kept.length > 1 && widthOf(`${kept.join('')}...`, size, bold) > width)
    kept = kept.slice(0, -1);
  return `${kept.join('').trimEnd()}...`;
}
