import { INCH, MILLIMETRE, units } from '../lengths/length.ts';
import type { Size } from '../lengths/length.ts';
import { parseSize } from '../lengths/parse-size.ts';

/** An envelope, named as shops name it, with where its size is from. */
export interface Envelope {
  readonly name: string;
  readonly size: Size;
  readonly source: string;
}

const PRACTICE = 'common practice, no source';
const ISO = 'ISO 269:1985';

/** From the smallest to the largest. */
export const ENVELOPES: readonly Envelope[] = [
  { name: 'C6', size: parseSize('114 x 162 mm'), source: ISO },
  { name: 'A2 (US)', size: parseSize('4 3/8 x 5 3/4 in'), source: PRACTICE },
  { name: 'A6 (US)', size: parseSize('4 3/4 x 6 1/2 in'), source: PRACTICE },
  { name: 'square 14 cm', size: parseSize('140 x 140 mm'), source: PRACTICE },
  { name: 'B6', size: parseSize('125 x 176 mm'), source: ISO },
  { name: 'DL', size: parseSize('110 x 220 mm'), source: ISO },
  { name: 'A7 (US)', size: parseSize('5 1/4 x 7 1/4 in'), source: PRACTICE },
  { name: 'C5', size: parseSize('162 x 229 mm'), source: ISO },
  { name: 'square 16 cm', size: parseSize('160 x 160 mm'), source: PRACTICE },
].sort((a, b) => area(a.size) - area(b.size));

/** The usual allowance: an eighth of an inch (3 mm for a metric card) more than the card, both ways. */
const ALLOWANCE = units(3 * MILLIMETRE);

/**
 * The smallest envelope that takes the folded card, lying either way, with the usual allowance of
 * about 1/8 in; null when none of ours does. A thick card (a bow, several layers) wants the next size.
 */
export function envelopeFor(card: Size): Envelope | null {
  return ENVELOPES.find(({ size }) => takes(size, card)) ?? null;
}

function takes(envelope: Size, card: Size): boolean {
  const [long, short] = sorted(envelope);
  const [cardLong, cardShort] = sorted(card);
  return long - cardLong >= ALLOWANCE && short - cardShort >= ALLOWANCE;
}

function sorted({ width, height }: Size): [number, number] {
  return width > height ? [width, height] : [height, width];
}

function area({ width, height }: Size): number {
  return (width / INCH) * (height / INCH);
}
