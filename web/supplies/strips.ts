import type { Side } from '../../server/contract/pads.ts';
import type { BestSupplies, Greeting, Supply } from '../../server/contract/supplies.ts';
import { matchWords } from '../words/match.ts';

/** What a greeting may be stamped on, by the name she knows it by, with how her inks read there. */
export interface Strip {
  readonly key: string;
  readonly name: string;
  readonly hex: string;
  readonly inks: Greeting['inks'];
}

/**
 * The paper itself and every cardstock that she has. The service answers once for colours that no eye tells apart,
 * but each cardstock is offered by its own name, or one that is like another seems to be forgotten.
 */
export function stripsOf(
  { greetings }: Pick<BestSupplies, 'greetings'>,
  { palette }: Pick<Side, 'palette'>,
  supplies: readonly Supply[],
): Strip[] {
  const papers = greetings.flatMap(({ strip, inks }): Strip[] => {
    if (!palette.some(({ lab }) => apart(lab, strip.lab) === 0)) return [];
    const { hex, name } = strip;
    return [{ key: hex, name: matchWords.greeting.thePapers(name), hex, inks }];
  });
  const stock = supplies.flatMap(({ id, kind, name, colour, sheets }): Strip[] => {
    if (kind !== 'cardstock' || sheets === 0 || greetings.length === 0) return [];
    const nearest = greetings.reduce((near, one) =>
      apart(one.strip.lab, colour.lab) < apart(near.strip.lab, colour.lab) ? one : near,
    );
    return [{ key: id, name, hex: colour.hex, inks: nearest.inks }];
  });
  return [...papers, ...stock];
}

/** The colour that the service answered for lies so near that the plain distance in CIELAB finds it. */
function apart([l, a, b]: readonly number[], of: readonly number[]): number {
  return Math.hypot(l! - of[0]!, a! - of[1]!, b! - of[2]!);
}
