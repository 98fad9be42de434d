import { useState } from 'preact/hooks';
import type { VNode } from 'preact';
import type { Supply } from '../../server/contract/supplies.ts';
import type { Problem } from '../../server/contract/values.ts';
import { Mishap } from '../table/mishap.tsx';
import { words } from '../words.ts';
import { asProblem } from '../wire/ask.ts';
import { service } from '../wire/service.ts';
import { supplies } from '../wire/shelves.ts';

/** One cardstock or ink: its colour as a large piece of it, its name that can be changed in place. */
export function SupplyCard({ supply }: { supply: Supply }): VNode {
  const [problem, setProblem] = useState<Problem | null>(null);
  const [asking, setAsking] = useState(false);

  async function takeAway(): Promise<void> {
    try {
      await service.removeSupply(supply.id);
      await supplies.fresh('all');
    } catch (fault) {
      setProblem(asProblem(fault));
    }
  }

  async function rename(name: string): Promise<void> {
    if (name.trim() === '' || name === supply.name) return;
    try {
      await service.changeSupply(supply.id, { name: name.trim() });
      await supplies.fresh('all');
    } catch (fault) {
      setProblem(asProblem(fault));
    }
  }

  return (
    <article class="supply" aria-label={supply.name}>
      <span class={`supply-colour ${supply.kind}`} style={{ background: supply.colour.hex }} />
      <input
        class="name-in-place"
        aria-label={words.supplies.nameOf(supply.name)}
        value={supply.name}
        maxLength={80}
        onChange={(event) => void rename(event.currentTarget.value)}
      />
      <span class="small">{supply.colour.name}</span>
      {supply.sheets !== null && <span class="small">{words.supplies.left(supply.sheets)}</span>}
      {asking ? (
        <>
          <button type="button" class="button" onClick={() => void takeAway()}>
            {words.supplies.takeAwaySure}
          </button>
          <button type="button" class="button quiet" onClick={() => setAsking(false)}>
            {words.supplies.keep}
          </button>
        </>
      ) : (
        <button
          type="button"
          class="button quiet"
          aria-label={words.supplies.takeAway(supply.name)}
          onClick={() => setAsking(true)}
        >
          {words.supplies.takeAwayShort}
        </button>
      )}
      {problem && <Mishap problem={problem} />}
    </article>
  );
}
