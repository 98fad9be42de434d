import type { VNode } from 'preact';
import { Icon } from '../table/icon.tsx';
import { guideWords } from '../words/guide.ts';
import type { Act } from './step.ts';
import { isTicked } from './ticked.ts';

interface Props {
  readonly plan: string;
  readonly acts: readonly Act[];
  /** The one that is shown large. */
  readonly shown: Act | null;
  readonly show: (act: Act) => void;
  readonly tick: (act: Act, done: boolean) => void;
}

/** The numbered acts of a step: a touch shows one large, its box ticks it; the one shown is marked. */
export function ActLines({ plan, acts, shown, show, tick }: Props): VNode {
  return (
    <ol class="cut-lines">
      {acts.map((act) => {
        const done = isTicked(plan, act.id);
        return (
          <li key={act.id} class={done ? 'act-line done' : 'act-line'}>
            <button
              type="button"
              class="act-tick"
              aria-pressed={done}
              aria-label={guideWords.tickAct(act.number, act.main)}
              onClick={() => tick(act, !done)}
            >
              <span class="act-box">{done && <Icon name="tick" />}</span>
            </button>
            <button
              type="button"
              class="act-show"
              aria-current={act === shown ? 'step' : undefined}
              onClick={() => show(act)}
            >
              <b>{act.number}</b> <span>{act.main}</span>
            </button>
          </li>
        );
      })}
    </ol>
  );
}
