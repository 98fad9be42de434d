import { useState } from 'preact/hooks';
import type { VNode } from 'preact';
import type { Pad } from '../../server/contract/pads.ts';
import type { Problem } from '../../server/contract/values.ts';
import { sizeFor } from '../lengths/lengths.ts';
import { announce } from '../table/announce.tsx';
import { Icon } from '../table/icon.tsx';
import { Mishap } from '../table/mishap.tsx';
import { ruler } from '../table/settings.ts';
import { leftWords } from '../words/left.ts';
import { asProblem } from '../wire/ask.ts';
import { service } from '../wire/service.ts';
import { leftovers } from '../wire/shelves.ts';
import { NewPart } from './new-part.tsx';

/** Kept parts of the sheets of a pad, for the next batch: listed, added, taken away. */
export function LeftStock({ pad }: { pad: Pad }): VNode | null {
  const [problem, setProblem] = useState<Problem | null>(null);
  const parts = leftovers.at(`${pad.id}/`).value.value?.leftovers ?? [];

  async function change(what: () => Promise<unknown>, said: string): Promise<boolean> {
    setProblem(null);
    try {
      await what();
      leftovers.freshAll();
      announce(said);
      return true;
    } catch (fault) {
      setProblem(asProblem(fault));
      return false;
    }
  }

  if (pad.sheets.length === 0) return null;
  return (
    <section class="left-stock" aria-labelledby="left-stock">
      <h2 id="left-stock">{leftWords.title}</h2>
      <p class="small">{parts.length === 0 ? leftWords.none : leftWords.how}</p>
      {problem && <Mishap problem={problem} />}
      <ul class="left-parts">
        {parts.map(({ id, label, size }) => {
          const name = leftWords.part(label, sizeFor(size, ruler.value));
          return (
            <li key={id}>
              <span>{name}</span>
              <button
                type="button"
                class="round"
                aria-label={leftWords.takeAway(name)}
                onClick={() =>
                  void change(() => service.removeLeftover(pad.id, id), leftWords.gone)
                }
              >
                <Icon name="close" />
              </button>
            </li>
          );
        })}
      </ul>
      <NewPart
        pad={pad}
        add={(part) => change(() => service.keepLeftovers(pad.id, part), leftWords.added)}
      />
    </section>
  );
}
