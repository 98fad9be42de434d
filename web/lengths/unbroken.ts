const HARD = '\u00a0';

/** Text in which no line breaks inside a length: `3 1/4 in` would be read as 3 where it breaks. A size may break before its x. */
export function unbroken(text: string): string {
  return text
    .replaceAll(/(\d) (?=\d+\/\d|(?:in|mm|cm)\b)/g, `$1${HARD}`)
    .replaceAll(/ ([x×]) (?=\d)/g, ` $1${HARD}`);
}
