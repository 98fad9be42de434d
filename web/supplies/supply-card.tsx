import { useState } from 'preact/hooks';
import type { VNode } from 'preact';
import type { Supply, SupplyPatch } from '../../server/contract/supplies.ts';
import type { Problem } from '../../server/contract/values.ts';
import { Icon } from '../table/icon.tsx';
import { Mishap } from '../table/mishap.tsx';
import { Typed } from '../table/typed.tsx';
import { suppliesWords } from '../words/supplies.ts';
import { asProblem } from '../wire/ask.ts';
import { service } from '../wire/service.ts';
import { guides, supplies } from '../wire/shelves.ts';
import { isCalledByColour } from './called-by-colour.ts';

/** One cardstock or ink: its colour as a large piece of it, its name that can be changed in place. */
export function SupplyCard({ supply }: { supply: Supply }): VNode {
  const [problem, setProblem] = useState<Problem | null>(null);
  const [asking, setAsking] = useState(false);

  async function takeAway(): Promise<void> {
    try {
      await service.removeSupply(supply.id);
      await supplies.fresh('all');
      // What a guide says is to be bought follows what is left.
      guides.freshAll();
    } catch (fault) {
      setProblem(asProblem(fault));
    }
  }

  async function change(what: SupplyPatch): Promise<void> {
    setProblem(null);
    try {
      await service.changeSupply(supply.id, what);
      await supplies.fresh('all');
      // What a guide says is to be bought follows what is left.
      guides.freshAll();
    } catch (fault) {
      setProblem(asProblem(fault));
    }
  }

  async function rename(name: string): Promise<void> {
    if (name.trim() !== '' && name !== supply.name) await change({ name: name.trim() });
  }

  const told = [
    ...(isCalledByColour(supply) ? [] : [supply.colour.name]),
    ...(supply.demo ? [suppliesWords.ofDemo] : []),
  ];
  return (
    <article class="supply" aria-label={supply.name}>
      <span class={`supply-colour ${supply.kind}`} style={{ background: supply.colour.hex }} />
      <Typed
        class="name-in-place"
        aria-label={suppliesWords.nameOf(supply.name)}
        value={supply.name}
        maxLength={80}
        settle={rename}
      />
      <span class="small">{told.join(', ')}</span>
      {supply.glossy && <span class="small">{suppliesWords.glossy}</span>}
      <div class="supply-foot">
        {supply.kind === 'cardstock' && (
          <label class="sheets-left small">
            <span>{suppliesWords.sheetsLeft}</span>
            <input
              type="number"
              inputMode="numeric"
              min="0"
              max="10000"
              step="1"
              aria-label={suppliesWords.sheetsLeftOf(supply.name)}
              value={supply.sheets ?? ''}
              onChange={({ currentTarget }) => {
                if (currentTarget.validity.valid)
                  void change({
                    sheets: currentTarget.value === '' ? null : Number(currentTarget.value),
                  });
              }}
            />
          </label>
        )}
        <button
          type="button"
          class="round plain"
          aria-label={suppliesWords.takeAway(supply.name)}
          aria-expanded={asking}
          onClick={() => setAsking(!asking)}
        >
          <Icon name="close" />
        </button>
      </div>
      {asking && (
        <>
          <button type="button" class="button" onClick={() => void takeAway()}>
            {suppliesWords.takeAwaySure}
          </button>
          <button type="button" class="button quiet" onClick={() => setAsking(false)}>
            {suppliesWords.keep}
          </button>
        </>
      )}
      {problem && <Mishap problem={problem} />}
    </article>
  );
}
