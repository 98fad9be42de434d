import { nameOf } from '../../colour/names.ts';
import type { Lab } from '../../colour/lab.ts';
import { chroma } from './look.ts';
import type { ColourTable, Look } from './look.ts';
import { misses } from './near-misses.ts';
import type { Term } from './pair-score.ts';
import { isQuietNeutral, sharedColours } from './shared-accents.ts';
import { same } from './steps.ts';
import { doublings, isPlain } from './mix.ts';

/** How two looks are called in a sentence: 'the panel' and 'the strip', say. */
export interface Called {
  readonly a: string;
  readonly b: string;
}

/** What speaks for and against two looks side by side, the weightiest first, as short phrases. */
export function phrases(
  a: Look,
  b: Look,
  table: ColourTable,
  terms: readonly Term[],
  called: Called,
): string[] {
  const value = (name: Term['name']): number =>
    terms.find((term) => term.name === name)?.value ?? 1;
  return [
    ...sharing(a, b, table),
    ...missing(a, b, table, value('nearMisses'), called),
    ...sizes(a, b, called),
    ...onGrounds(a, b, table, value('grounds')),
    ...alike(value('contrast'), called),
    ...(value('busyness') < 0.6 ? ['both busy'] : []),
    ...(value('direction') < 0.9 ? ['two directions of one size'] : []),
  ];
}

/** Weaker sharing is not worth a word. */
const WORTH_SAYING = 0.05;

function sharing(a: Look, b: Look, table: ColourTable): string[] {
  const found = sharedColours(a, b, table).filter((pair) => pair.strength >= WORTH_SAYING);
  const shared = found.filter((pair) => !pair.tone);
  if (shared.length > 0) {
    const named = shared.slice(0, 2).map((pair) => {
      const lab = pair.a.share >= pair.b.share ? pair.a.lab : pair.b.lab;
      const solid = a.solid ? pair.b : b.solid ? pair.a : null;
      const parts =
        a.solid && b.solid
          ? ''
          : solid === null
            ? ` (${percent(pair.a.share)} and ${percent(pair.b.share)})`
            : ` (${percent(solid.share)} of the paper)`;
      return `${words(lab)}${parts}`;
    });
    return [`${a.solid !== b.solid ? 'picks up' : 'share'} ${named.join(' and ')}`];
  }
  const tone = found[0];
  if (tone !== undefined)
    return [`tones of ${words(chroma(tone.a.lab) > chroma(tone.b.lab) ? tone.a.lab : tone.b.lab)}`];
  const neutral = isQuietNeutral(a) ? a : isQuietNeutral(b) ? b : null;
  if (neutral !== null) return [`quiet ${words(neutral.ground.lab)} goes with it`];
  return ['no shared colour'];
}

function missing(a: Look, b: Look, table: ColourTable, term: number, called: Called): string[] {
  if (term > 0.9) return [];
  const worst = misses(a, b, table)[0];
  if (worst === undefined) return [];
  return [
    `the ${words(worst.a.lab)} of ${called.a} almost meets the ${words(worst.b.lab)} of ${called.b}, but not quite`,
  ];
}

function sizes(a: Look, b: Look, called: Called): string[] {
  if (a.solid || b.solid) return [];
  const apart = doublings(a, b);
  if (apart === null) {
    if (isPlain(a) === isPlain(b)) return [];
    return [`a print beside plain paper`];
  }
  if (apart < 0.6) return a.busyness > 0.4 && b.busyness > 0.4 ? ['prints of one size'] : [];
  return a.scale > b.scale
    ? [`the larger print on ${called.a} beside the smaller on ${called.b}`]
    : [`the larger print on ${called.b} beside the smaller on ${called.a}`];
}

function onGrounds(a: Look, b: Look, table: ColourTable, term: number): string[] {
  if (a.solid || b.solid) return [];
  const alikeGrounds = same(table.between(a.ground.index, b.ground.index));
  if (alikeGrounds > 0.6) return [`both on ${words(a.ground.lab)}`];
  if (term < 0.5) return [`${words(a.ground.lab)} ground beside ${words(b.ground.lab)}`];
  return [];
}

function alike(contrastTerm: number, called: Called): string[] {
  return contrastTerm < 0.3 ? [`hard to tell apart where ${called.a} meets ${called.b}`] : [];
}

/** A share as a person says it. */
export function percent(share: number): string {
  return share < 0.01 ? 'under 1 %' : `${Math.round(share * 100)} %`;
}

export function words(lab: Lab): string {
  return nameOf(lab).words;
}
