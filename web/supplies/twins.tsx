import { useState } from 'preact/hooks';
import type { VNode } from 'preact';
import type { Supply } from '../../server/contract/supplies.ts';
import type { Problem } from '../../server/contract/values.ts';
import { remembered } from '../table/memory.ts';
import { announce } from '../table/announce.tsx';
import { Icon } from '../table/icon.tsx';
import { Mishap } from '../table/mishap.tsx';
import { suppliesWords } from '../words/supplies.ts';
import { asProblem } from '../wire/ask.ts';
import { service } from '../wire/service.ts';
import { guides, supplies as shelf, twins } from '../wire/shelves.ts';

/** Pairs of which she said that they are two, each as both ids. */
const areTwo = remembered<readonly string[]>('are-two', [], isWords);
const MOST_TWO = 500;

/** What can hardly be told from another of hers: most likely the same card twice, and one touch puts one away. */
export function Twins({ supplies }: { supplies: readonly Supply[] }): VNode | null {
  const [problem, setProblem] = useState<Problem | null>(null);
  const say = suppliesWords.twins;
  const key = supplies.map(({ id, revision }) => `${id}.${revision}`).join();
  const by = new Map(supplies.map((supply) => [supply.id, supply]));
  const pairs = (twins.at(key).value.value ?? []).flatMap(({ first, again }) => {
    const [one, other] = [by.get(first), by.get(again)];
    if (one === undefined || other === undefined || areTwo.value.includes(pairOf(one, other)))
      return [];
    return [{ first: one, again: other }];
  });
  if (pairs.length === 0 && problem === null) return null;

  async function putAway({ id, name }: Supply): Promise<void> {
    setProblem(null);
    try {
      await service.removeSupply(id);
      announce(say.away(name));
      guides.freshAll();
    } catch (fault) {
      setProblem(asProblem(fault));
    }
    await shelf.fresh('all');
  }

  return (
    <section aria-label={say.heading}>
      <h2>{say.heading}</h2>
      <p>{say.lead}</p>
      <ul class="best-list shopping">
        {pairs.map(({ first, again }) => (
          <li key={again.id}>
            <span class={`chip big ${first.kind}`} style={{ background: first.colour.hex }} />
            <span class={`chip big ${again.kind}`} style={{ background: again.colour.hex }} />
            <div>
              <span>{say.pair(again.name, first.name)}</span>
              <div class="twin-ways">
                <button type="button" class="button quiet" onClick={() => void putAway(again)}>
                  <Icon name="close" /> {say.putAway(again.name)}
                </button>
                <button
                  type="button"
                  class="button quiet"
                  aria-label={`${say.both}: ${say.pair(again.name, first.name)}`}
                  onClick={() => {
                    areTwo.value = [...areTwo.value, pairOf(first, again)].slice(-MOST_TWO);
                  }}
                >
                  <Icon name="tick" /> {say.both}
                </button>
              </div>
            </div>
          </li>
        ))}
      </ul>
      {problem && <Mishap problem={problem} />}
    </section>
  );
}

function pairOf(first: Supply, again: Supply): string {
  return `${first.id} ${again.id}`;
}

function isWords(value: unknown): value is readonly string[] {
  return Array.isArray(value) && value.every((one) => typeof one === 'string');
}
