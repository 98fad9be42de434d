import type { VNode } from 'preact';
import { Icon } from '../table/icon.tsx';
import type { Act } from './step.ts';
import { isTicked } from './ticked.ts';

interface Props {
  readonly plan: string;
  readonly acts: readonly Act[];
  /** The one that is shown large. */
  readonly now: Act | null;
  readonly tick: (act: Act, done: boolean) => void;
}

/** The numbered acts of a step, each ticked by a touch; the one at hand is marked. */
export function ActLines({ plan, acts, now, tick }: Props): VNode {
  return (
    <ol class="cut-lines">
      {acts.map((act) => {
        const done = isTicked(plan, act.id);
        return (
          <li key={act.id}>
            <button
              type="button"
              class={done ? 'cut-line done' : 'cut-line'}
              aria-pressed={done}
              aria-current={act === now ? 'step' : undefined}
              onClick={() => tick(act, !done)}
            >
              <span class="cut-number">
                {done && <Icon name="tick" />}
                <span class={done ? 'unseen' : ''}>{act.number}</span>
              </span>
              <span>{act.main}</span>
            </button>
          </li>
        );
      })}
    </ol>
  );
}
