import { useState } from 'preact/hooks';
import type { VNode } from 'preact';
import type { Sheet, SheetPatch } from '../../server/contract/pads.ts';
import type { Problem } from '../../server/contract/values.ts';
import { announce } from '../table/announce.tsx';
import { Mishap } from '../table/mishap.tsx';
import { Typed } from '../table/typed.tsx';
import { padWords } from '../words/pad.ts';
import { asProblem } from '../wire/ask.ts';
import { service } from '../wire/service.ts';
import { pads } from '../wire/shelves.ts';

/** What a photo cannot tell of a sheet: what she calls it, and how many of it the pad holds. */
export function SheetFacts({ pad, sheet }: { pad: string; sheet: Sheet }): VNode {
  const [problem, setProblem] = useState<Problem | null>(null);

  async function save(change: SheetPatch): Promise<void> {
    setProblem(null);
    try {
      await service.changeSheet(sheet.id, change);
      await pads.fresh(pad);
      announce(padWords.factsSaved);
    } catch (fault) {
      setProblem(asProblem(fault));
    }
  }

  return (
    <div class="sheet-facts">
      <label class="field">
        <span>{padWords.label}</span>
        <Typed
          value={sheet.label}
          maxLength={60}
          autoComplete="off"
          settle={(label) => save({ label: label.trim() })}
        />
      </label>
      <label class="field">
        <span>{padWords.copyCount}</span>
        <Typed
          type="number"
          min="1"
          max="24"
          value={sheet.copies}
          settle={(copies) => save({ copies: Number(copies) })}
        />
      </label>
      {problem && <Mishap problem={problem} />}
    </div>
  );
}
