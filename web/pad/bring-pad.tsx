import { useState } from 'preact/hooks';
import type { VNode } from 'preact';
import type { Problem } from '../../server/contract/values.ts';
import { announce } from '../table/announce.tsx';
import { Icon } from '../table/icon.tsx';
import { Mishap } from '../table/mishap.tsx';
import { padsWords } from '../words/pads.ts';
import { asProblem } from '../wire/ask.ts';
import { service } from '../wire/service.ts';
import { padList, pads } from '../wire/shelves.ts';

/** Takes in a pad that was saved as one file, here or on another computer. */
export function BringPad(): VNode {
  const [problem, setProblem] = useState<Problem | null>(null);
  const [bringing, setBringing] = useState(false);

  async function bring(file: File | undefined): Promise<void> {
    if (!file) return;
    setProblem(null);
    setBringing(true);
    try {
      const pad = await service.bringPad(file);
      pads.put(pad.id, pad);
      announce(padsWords.brought(pad.name));
      await padList.fresh('all');
    } catch (fault) {
      setProblem(asProblem(fault));
    }
    setBringing(false);
  }

  return (
    <div class="bring-pad">
      <label class="button quiet file" aria-busy={bringing}>
        <input
          type="file"
          accept=".tar,application/x-tar"
          disabled={bringing}
          onChange={(event) => {
            void bring(event.currentTarget.files?.[0]);
            event.currentTarget.value = '';
          }}
        />
        <Icon name="bring" /> {bringing ? padsWords.bringing : padsWords.bring}
      </label>
      {problem && <Mishap problem={problem} away={() => setProblem(null)} />}
    </div>
  );
}
