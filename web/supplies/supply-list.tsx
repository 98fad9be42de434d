import { useState } from 'preact/hooks';
import type { VNode } from 'preact';
import type { Supply } from '../../server/contract/supplies.ts';
import type { Problem } from '../../server/contract/values.ts';
import { announce } from '../table/announce.tsx';
import { Icon } from '../table/icon.tsx';
import { Mishap } from '../table/mishap.tsx';
import { suppliesWords } from '../words/supplies.ts';
import { asProblem } from '../wire/ask.ts';
import { service } from '../wire/service.ts';
import { supplies } from '../wire/shelves.ts';

/** Her supplies as a plain list, out and in; and the demo's put away. */
export function SupplyListButtons({ list }: { list: readonly Supply[] }): VNode {
  const [problem, setProblem] = useState<Problem | null>(null);
  const say = suppliesWords.list;
  const demo = list.filter((supply) => supply.demo);

  async function bring(file: File | undefined): Promise<void> {
    if (file === undefined) return;
    setProblem(null);
    try {
      const { added, changed, supplies: now } = await service.bringSupplies(await file.text());
      supplies.put('all', now);
      announce(say.brought(added, changed));
    } catch (fault) {
      setProblem(asProblem(fault));
    }
  }

  async function putAway(): Promise<void> {
    setProblem(null);
    try {
      for (const { id } of demo) await service.removeSupply(id);
    } catch (fault) {
      setProblem(asProblem(fault));
    }
    await supplies.fresh('all');
  }

  return (
    <div class="supply-list-buttons">
      {list.length > 0 && (
        <a class="button quiet" href="/api/supplies.csv" download="supplies.csv">
          <Icon name="guide" /> {say.save}
        </a>
      )}
      <label class="button quiet file">
        <input
          type="file"
          accept=".csv,text/csv"
          onChange={(event) => {
            void bring(event.currentTarget.files?.[0]);
            event.currentTarget.value = '';
          }}
        />
        <Icon name="plus" /> {say.bring}
      </label>
      {demo.length > 0 && (
        <button type="button" class="button quiet" onClick={() => void putAway()}>
          <Icon name="close" /> {say.putAwayDemo}
        </button>
      )}
      {problem && <Mishap problem={problem} />}
    </div>
  );
}
