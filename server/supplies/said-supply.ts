import { nearlySaid, saidColour } from '../colour/said-colour.ts';
import type { SaidColour } from '../colour/said-colour.ts';
import { Refusal } from '../refusals/refusal.ts';

/**
 * The colour of a cardstock or an ink that is told in words. Refuses words that stand for no colour, with
 * the ones that come near to them.
 */
export function saidSupply(words: string): SaidColour {
  const said = saidColour(words);
  if (said !== null) return said;
  const near = nearlySaid(words);
  throw new Refusal({
    kind: 'not-understood',
    field: 'colour.words',
    received: words,
    message: `Expected the name of a colour but received '${words}'`,
    mend: `${near.length === 0 ? 'Say it in plain words, like dark reddish orange or forest green' : `Perhaps ${near.join(', or ')}`}; or write it as #0f5257, or as three numbers: lab 32 -18 -9.`,
  });
}
