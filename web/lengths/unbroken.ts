const HARD = '\u00a0';

/** What stands behind a figure and belongs to it. */
const UNITS = '(?:%|in|mm|cm|m|s|ms|kB|MB|GB|dpi)(?![\\p{L}\\d])';
const IN_FIGURE = new RegExp(`(?<=\\d)\\s(?=\\d+/\\d|${UNITS})`, 'gu');
const BEFORE_SIDE = /(?<=\s)([x×])\s(?=\d)/g;

/**
 * Text in which no line breaks inside a figure: `3 1/4 in` would be read as 3 where it breaks, and a unit or a
 * percent sign at the beginning of a line belongs to nothing. A size may break before its x.
 */
export function unbroken(text: string): string {
  if (!/\d\s/.test(text) && !/[x×]\s\d/.test(text)) return text;
  return text.replaceAll(IN_FIGURE, HARD).replaceAll(BEFORE_SIDE, `$1${HARD}`);
}
