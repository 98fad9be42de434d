import { useState } from 'preact/hooks';
import type { VNode } from 'preact';
import type { Problem } from '../../server/contract/values.ts';
import { Dialog } from '../table/dialog.tsx';
import { Mishap } from '../table/mishap.tsx';
import { go } from '../table/way.ts';
import { padsWords } from '../words/pads.ts';
import { asProblem } from '../wire/ask.ts';
import { service } from '../wire/service.ts';
import { padList } from '../wire/shelves.ts';
import { SheetSizes, sheetSizes, type SheetSize } from './sheet-sizes.tsx';

/** Names a new pad and says how big its sheets are. */
export function NewPadSheet({ close }: { close: () => void }): VNode {
  const [name, setName] = useState('');
  const [size, setSize] = useState<SheetSize>(sheetSizes[0]);
  const [problem, setProblem] = useState<Problem | null>(null);
  const [sending, setSending] = useState(false);

  async function start(event: Event): Promise<void> {
    event.preventDefault();
    setSending(true);
    try {
      const sheetSize = { width: size.width, height: size.height };
      const pad = await service.startPad({ name: name.trim(), sheetSize });
      void padList.fresh('all');
      go({ at: 'photos', pad: pad.id, plan: null });
    } catch (fault) {
      setProblem(asProblem(fault));
      setSending(false);
    }
  }

  return (
    <Dialog title={padsWords.start} close={close}>
      <form onSubmit={(event) => void start(event)}>
        <label class="field">
          <span>{padsWords.name}</span>
          <input
            name="name"
            required
            maxLength={120}
            autoComplete="off"
            value={name}
            placeholder={padsWords.nameHint}
            onInput={(event) => setName(event.currentTarget.value)}
          />
        </label>
        <SheetSizes chosen={size} choose={setSize} />
        {problem && <Mishap problem={problem} />}
        <div class="ends">
          <button type="submit" class="button" disabled={sending}>
            {padsWords.create}
          </button>
        </div>
      </form>
    </Dialog>
  );
}
