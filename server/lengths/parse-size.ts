import { expected } from '../refusals/refusal.ts';
import type { Size } from './length.ts';
import { parseLength } from './parse-length.ts';

/**
 * Reads a size as a person writes it: `6 x 6 in`, `4 1/4 in x 5 1/2 in`, `105 × 148 mm`; the unit may
 * stand once, at the end. Refuses anything else, with the field it was asked for.
 */
export function parseSize(text: string, field = 'size'): Size {
  const [first, second, ...more] = text.split(/\s*(?:[x×]|\bby\b)\s*/iu);
  if (!first || !second || more.length > 0)
    throw expected(
      'a width and a height',
      field,
      text,
      'Write both with an x between them, like 6 x 6 in or 105 x 148 mm.',
    );
  const unit = /[a-z"″”'.]+\s*$/iu.exec(second)?.[0] ?? '';
  const width = /[a-z"″”]/iu.test(first) ? first : `${first} ${unit}`;
  return {
    width: parseLength(width, `${field}.width`),
    height: parseLength(second, `${field}.height`),
  };
}
