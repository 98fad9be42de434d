import type { VNode } from 'preact';
import type { Greeting, StampedInk } from '../../server/contract/supplies.ts';
import { matchWords } from '../words/match.ts';
import { Why } from './why.tsx';

interface InkOfGreetings {
  readonly ink: StampedInk;
  readonly cards: readonly number[];
}

/** Which ink the greetings of planned cards are stamped in, as the guide says it; nothing where none can be read. */
export function GreetingInks({ greetings }: { greetings: readonly Greeting[] }): VNode | null {
  const say = matchWords.best;
  const inks = inksOf(greetings);
  if (inks.length === 0) return null;
  return (
    <>
      <h3>{say.greetingInks}</h3>
      <ul class="best-list shopping">
        {inks.map(({ ink, cards }) => (
          <li key={ink.ink}>
            <span class="chip big" style={{ background: ink.printed.hex }} />
            <div>
              <strong>{ink.name}</strong> {say.forGreetings(cards)}:{' '}
              {matchWords.greeting.reads[ink.reads]}
              <Why of={ink.name} text={ink.reason} measured={null} />
            </div>
          </li>
        ))}
      </ul>
    </>
  );
}

/** The first ink of each greeting that can be read in it; one line an ink, told by the strip on which it reads least. */
function inksOf(greetings: readonly Greeting[]): InkOfGreetings[] {
  const found = new Map<string, InkOfGreetings>();
  for (const { inks, cards } of greetings) {
    const [ink] = inks;
    if (ink === undefined || ink.reads === 'cannot be read' || cards.length === 0) continue;
    const before = found.get(ink.ink);
    found.set(ink.ink, {
      ink: before && before.ink.contrast < ink.contrast ? before.ink : ink,
      cards: [...new Set([...(before?.cards ?? []), ...cards])],
    });
  }
  return [...found.values()];
}
