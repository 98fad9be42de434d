import { useState } from 'preact/hooks';
import type { ComponentChildren, VNode } from 'preact';
import { planWords } from '../words/plan.ts';
import { Mends } from './mends.tsx';
import { NextPlans } from './next-plans.tsx';
import { SheetCounts } from './sheet-counts.tsx';
import { SheetGone } from './sheet-gone.tsx';
import type { Wishes } from './wishes.ts';
import type { OnTable } from './table-of.ts';

export interface ElseProps {
  readonly table: OnTable;
  readonly wishes: Wishes;
  readonly busy: boolean;
  readonly wish: (change: Partial<Wishes>) => void;
  /** Has a plan with other sheets in its slots. */
  readonly take: (slots: Readonly<Record<string, string>>) => void;
  /** Looks closer at a card. */
  readonly open: (card: number) => void;
}

/** What else the plan could be. Each answer is worked out only when she opens it. */
export function WhatElse(props: ElseProps): VNode {
  const { weakest } = props.table.plan;
  return (
    <section class="what-else" aria-labelledby="what-else">
      <h2 id="what-else">{planWords.else.heading}</h2>
      <Opening title={planWords.else.next}>
        <NextPlans {...props} />
      </Opening>
      {weakest !== null && (
        <Opening title={planWords.else.mend(weakest)}>
          <Mends {...props} />
        </Opening>
      )}
      <Opening title={planWords.else.gone}>
        <SheetGone {...props} />
      </Opening>
      <Opening title={planWords.else.amount}>
        <SheetCounts {...props} />
      </Opening>
    </section>
  );
}

function Opening({ title, children }: { title: string; children: ComponentChildren }): VNode {
  const [open, setOpen] = useState(false);
  return (
    <details class="opening" onToggle={(event) => setOpen(event.currentTarget.open)}>
      <summary>{title}</summary>
      {open && <div class="opened">{children}</div>}
    </details>
  );
}
