import { lostIn } from './contrast.ts';
import { chroma } from './look.ts';
import type { ColourTable, Look } from './look.ts';
import { doublings, isPlain } from './mix.ts';
import { misses } from './near-misses.ts';
import type { Term, TermName } from './pair-score.ts';
import { isQuietNeutral, saidToShare } from './shared-accents.ts';
import type { SharedColour } from './shared-accents.ts';
import { same } from './steps.ts';
import { tieOtherwise } from './ties-otherwise.ts';
import { percent, words } from './words.ts';

/** How two looks are called in a sentence: 'the panel' and 'the strip', say. */
export interface Called {
  readonly a: string;
  readonly b: string;
}

/** One thing that speaks for or against two looks side by side, as a whole sentence; and the same in short. */
export interface Statement {
  readonly good: boolean;
  /** How much it counts in the score of the pair. */
  readonly much: number;
  readonly text: string;
  readonly short: string;
}

/** What speaks against two looks side by side, the worst first, and then what speaks for them. */
export function statements(
  a: Look,
  b: Look,
  table: ColourTable,
  terms: readonly Term[],
  called: Called,
): Statement[] {
  const judged = new Map(terms.map((term) => [term.name, term]));
  const said = [
    ...sharing(a, b, table, isLost(a, b, value(judged, 'contrast')), called),
    almost(a, b, table, value(judged, 'nearMisses'), called),
    sizes(a, b, called),
    onGrounds(a, b, table, value(judged, 'grounds'), called),
    toldApart(a, b, value(judged, 'contrast'), called),
    value(judged, 'busyness') < 0.6
      ? bad('busyness', `The prints of ${called.a} and ${called.b} are both busy.`)
      : null,
    value(judged, 'direction') < 0.9
      ? bad(
          'direction',
          `The prints of ${called.a} and ${called.b} have a direction each, and these may quarrel.`,
          `The directions of ${called.a} and ${called.b} may quarrel.`,
        )
      : null,
  ].flatMap((one): Statement[] => {
    if (one === null) return [];
    const { term, good, text, short = text } = one;
    const { weight = 0, value: worth = 1 } = judged.get(term) ?? {};
    return [{ good, text, short, much: weight * (good ? worth : 1 - worth) }];
  });
  return said.sort((x, y) => Number(x.good) - Number(y.good) || y.much - x.much);
}

interface Said {
  readonly term: TermName;
  readonly good: boolean;
  readonly text: string;
  readonly short?: string;
}

function value(judged: ReadonlyMap<TermName, Term>, name: TermName): number {
  return judged.get(name)?.value ?? 1;
}

function good(term: TermName, text: string, short = text): Said {
  return { term, good: true, text: sentence(text), short: sentence(short) };
}

function bad(term: TermName, text: string, short = text): Said {
  return { term, good: false, text: sentence(text), short: sentence(short) };
}

function sharing(a: Look, b: Look, table: ColourTable, lost: boolean, called: Called): Said[] {
  const found = saidToShare(a, b, table);
  const shared = found.filter((pair) => !pair.tone).slice(0, 2);
  const first = shared[0];
  if (first !== undefined) {
    const all = shared.map((pair) => `${nameOf(pair)}${partsOf(pair, a, b)}`).join(' and ');
    if (a.solid === b.solid)
      return [
        good(
          'accents',
          `${called.a} and ${called.b} share ${all}.`,
          `${called.a} and ${called.b} share ${nameOf(first)}.`,
        ),
      ];
    const [stock, paper] = a.solid ? [called.a, called.b] : [called.b, called.a];
    return [
      good(
        'accents',
        `${stock} picks up the ${all} of ${paper}.`,
        `${stock} picks up the ${nameOf(first)} of ${paper}.`,
      ),
    ];
  }
  const tone = found[0];
  if (tone !== undefined) {
    const lab = chroma(tone.a.lab) > chroma(tone.b.lab) ? tone.a.lab : tone.b.lab;
    return [good('accents', `${called.a} and ${called.b} show two tones of ${words(lab)}.`)];
  }
  if (isQuietNeutral(a) || isQuietNeutral(b)) {
    const stock = isQuietNeutral(a) ? called.a : called.b;
    return [good('accents', `${stock} is of a quiet colour that goes with any paper.`)];
  }
  const none = bad('accents', `${called.a} and ${called.b} have no colour in common.`);
  return lost ? [none] : [good('contrast', tieOtherwise(a, b, called)), none];
}

function nameOf({ a, b }: SharedColour): string {
  return words(a.share >= b.share ? a.lab : b.lab);
}

function partsOf(pair: SharedColour, a: Look, b: Look): string {
  if (a.solid && b.solid) return '';
  if (a.solid) return ` (${percent(pair.b.share)} of it)`;
  if (b.solid) return ` (${percent(pair.a.share)} of it)`;
  return ` (${percent(pair.a.share)} and ${percent(pair.b.share)})`;
}

function almost(a: Look, b: Look, table: ColourTable, term: number, called: Called): Said | null {
  if (term > 0.9) return null;
  const worst = misses(a, b, table)[0];
  if (worst === undefined) return null;
  const [one, other] = [words(worst.a.lab), words(worst.b.lab)];
  const said =
    one === other
      ? `${called.a} and ${called.b} show two kinds of ${one} that almost meet`
      : `The ${one} of ${called.a} almost meets the ${other} of ${called.b}`;
  return bad('nearMisses', `${said}, but not quite.`, `${said}.`);
}

function sizes(a: Look, b: Look, called: Called): Said | null {
  if (a.solid || b.solid) return null;
  const apart = doublings(a, b);
  if (apart === null) {
    if (isPlain(a) === isPlain(b)) return null;
    const [plain, print] = isPlain(a) ? [called.a, called.b] : [called.b, called.a];
    return good('scale', `${plain} lies plain beside the print of ${print}.`);
  }
  if (apart < 0.6)
    return a.busyness > 0.4 && b.busyness > 0.4
      ? bad('scale', `The prints of ${called.a} and ${called.b} are of one size.`)
      : null;
  const [large, small] = a.scale > b.scale ? [called.a, called.b] : [called.b, called.a];
  return good('scale', `The larger print of ${large} lies beside the smaller print of ${small}.`);
}

function onGrounds(
  a: Look,
  b: Look,
  table: ColourTable,
  term: number,
  called: Called,
): Said | null {
  if (a.solid || b.solid) return null;
  const [one, other] = [words(a.ground.lab), words(b.ground.lab)];
  if (same(table.between(a.ground.index, b.ground.index)) > 0.6)
    return good('grounds', `${called.a} and ${called.b} are both printed on ${one}.`);
  if (term >= 0.5) return null;
  return bad(
    'grounds',
    one === other
      ? `The grounds of ${called.a} and ${called.b} are two kinds of ${one}.`
      : `The ${one} ground of ${called.a} is almost the ${other} one of ${called.b}.`,
    `The grounds of ${called.a} and ${called.b} are almost alike.`,
  );
}

/** A cardstock is said to be lost where it is told from less than half of the print beside it. A judgement. */
const LOST = 0.5;

/** Whether the edge between a cardstock and a print is hard to see; `term` is their contrast. */
export function isLost(a: Look, b: Look, term: number): boolean {
  return a.solid !== b.solid && term < LOST;
}

function toldApart(a: Look, b: Look, term: number, called: Called): Said | null {
  if (isLost(a, b, term)) {
    const [stock, paper] = a.solid ? [called.a, called.b] : [called.b, called.a];
    const { lab } = a.solid ? lostIn(a, b) : lostIn(b, a);
    return bad(
      'contrast',
      `${stock} is hard to tell from the ${words(lab)} of ${paper} where they meet.`,
      `${stock} is hard to tell from ${paper}.`,
    );
  }
  if (term >= 0.3) return null;
  return bad('contrast', `${called.a} is hard to tell from ${called.b} where they meet.`);
}

export function sentence(text: string): string {
  return text.charAt(0).toUpperCase() + text.slice(1);
}
