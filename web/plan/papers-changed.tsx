import type { VNode } from 'preact';
import type { Pad } from '../../server/contract/pads.ts';
import type { Plan } from '../../server/contract/plans.ts';
import { Icon } from '../table/icon.tsx';
import { planWords } from '../words/plan.ts';
import { papersSince } from './papers-since.ts';

interface Props {
  readonly plan: Plan;
  readonly pad: Pad;
  readonly busy: boolean;
  readonly again: () => void;
}

/** A plan keeps the papers as they were read on its day: when they were corrected since, one touch plans anew. */
export function PapersChanged({ plan, pad, busy, again }: Props): VNode | null {
  const say = planWords.papersSince;
  const { turned, corrected, added, gone } = papersSince(plan, pad);
  const said = [
    ...(turned.length > 0 ? [say.turned(turned)] : []),
    ...(corrected.length > 0 ? [say.corrected(corrected)] : []),
    ...(added.length > 0 ? [say.added(added)] : []),
    ...(gone ? [say.gone] : []),
  ];
  if (said.length === 0) return null;
  return (
    <div class="papers-changed">
      <p>{said.join(' ')}</p>
      <button type="button" class="button" disabled={busy} onClick={again}>
        <Icon name="turn" /> {say.again}
      </button>
    </div>
  );
}
