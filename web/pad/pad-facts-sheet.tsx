import { useState } from 'preact/hooks';
import type { VNode } from 'preact';
import type { PadSummary } from '../../server/contract/pads.ts';
import type { Problem } from '../../server/contract/values.ts';
import { announce } from '../table/announce.tsx';
import { Dialog } from '../table/dialog.tsx';
import { Icon } from '../table/icon.tsx';
import { Mishap } from '../table/mishap.tsx';
import { Typed } from '../table/typed.tsx';
import { padsWords } from '../words/pads.ts';
import { asProblem, askWhether } from '../wire/ask.ts';
import { service } from '../wire/service.ts';
import { padList, pads } from '../wire/shelves.ts';

/** What is done with a whole pad: name it, save it as one file, delete it. */
export function PadFactsSheet({ pad, close }: { pad: PadSummary; close: () => void }): VNode {
  const [problem, setProblem] = useState<Problem | null>(null);
  const [sure, setSure] = useState(false);
  const [saving, setSaving] = useState(false);
  const file = { href: `/api/pads/${pad.id}/file`, download: fileName(pad.name) };

  async function attempt(act: () => Promise<unknown>): Promise<boolean> {
    setProblem(null);
    try {
      await act();
      await padList.fresh('all');
      return true;
    } catch (fault) {
      setProblem(asProblem(fault));
      return false;
    }
  }

  async function rename(name: string): Promise<void> {
    const wanted = name.trim();
    if (wanted === '' || wanted === pad.name) return;
    if (await attempt(() => service.renamePad(pad.id, wanted))) await pads.fresh(pad.id);
  }

  /** Asked first, so that a pad that cannot be saved is told with the reason. */
  async function save(): Promise<void> {
    if (saving) return;
    setSaving(true);
    setProblem(null);
    try {
      await askWhether(file.href);
      Object.assign(document.createElement('a'), file).click();
    } catch (fault) {
      setProblem(asProblem(fault));
    }
    setSaving(false);
  }

  async function remove(): Promise<void> {
    if (!sure) {
      setSure(true);
      return;
    }
    if (!(await attempt(() => service.removePad(pad.id)))) return;
    announce(padsWords.removed(pad.name));
    close();
  }

  return (
    <Dialog title={padsWords.look(pad.name)} close={close}>
      <label class="field">
        <span>{padsWords.rename}</span>
        <Typed value={pad.name} maxLength={120} autoComplete="off" settle={rename} />
      </label>
      <div class="pad-saving">
        <p>{padsWords.saveLead}</p>
        <a
          {...file}
          class="button"
          aria-disabled={saving}
          onClick={(event) => {
            event.preventDefault();
            void save();
          }}
        >
          <Icon name="save" /> {saving ? padsWords.saving : padsWords.save}
        </a>
      </div>
      {problem && <Mishap problem={problem} />}
      <div class="ends">
        <button type="button" class="button quiet" onClick={() => void remove()}>
          {sure ? padsWords.throwAwaySure : padsWords.throwAway}
        </button>
      </div>
    </Dialog>
  );
}

function fileName(name: string): string {
  return `${name.replace(/[^\p{L}\p{N}]+/gu, '-')}.tar`;
}
