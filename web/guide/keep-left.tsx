import { useState } from 'preact/hooks';
import type { VNode } from 'preact';
import type { Problem } from '../../server/contract/values.ts';
import { announce } from '../table/announce.tsx';
import { Mishap } from '../table/mishap.tsx';
import { leftWords } from '../words/left.ts';
import { asProblem } from '../wire/ask.ts';
import { service } from '../wire/service.ts';
import { leftovers } from '../wire/shelves.ts';
import type { GuideBook } from './steps-of.ts';
import { isTicked, tick } from './ticked.ts';

/** What this batch leaves becomes stock of the pad, once. */
export function KeepLeft({ book }: { book: GuideBook }): VNode {
  const { plan, pad } = book.table;
  const [problem, setProblem] = useState<Problem | null>(null);
  const kept = book.kept.leftovers.some((one) => one.plan === plan.id);
  const spared = new Set(book.kept.spared);
  const uncut = book.cuts.slots.filter(
    ({ slot, left }) => left.length > 0 && !spared.has(slot) && !isTicked(plan.id, `cut-${slot}`),
  );

  async function keep(): Promise<void> {
    setProblem(null);
    for (const { slot } of uncut) tick(plan.id, `cut-${slot}`, true);
    try {
      await service.keepLeftovers(pad.id, { plan: plan.id });
      leftovers.freshAll();
      announce(leftWords.kept);
    } catch (fault) {
      setProblem(asProblem(fault));
    }
  }

  return (
    <>
      {problem && <Mishap problem={problem} />}
      {kept ? (
        <p>{leftWords.kept}</p>
      ) : (
        <>
          {uncut.length > 0 && <p>{leftWords.uncut(uncut.map(({ name }) => name))}</p>}
          <p>
            <button type="button" class="button quiet" onClick={() => void keep()}>
              {uncut.length > 0 ? leftWords.cutAndKeep : leftWords.keep}
            </button>
          </p>
        </>
      )}
    </>
  );
}
