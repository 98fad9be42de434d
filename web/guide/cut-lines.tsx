import type { VNode } from 'preact';
import { Icon } from '../table/icon.tsx';
import { isTicked } from './ticked.ts';
import type { Cut } from './steps-of.ts';

interface Props {
  readonly plan: string;
  readonly cuts: readonly Cut[];
  readonly tick: (cut: Cut, done: boolean) => void;
}

/** The numbered cuts of a sheet: what to set, large, what comes of it, small; each ticked by a touch. */
export function CutLines({ plan, cuts, tick }: Props): VNode {
  return (
    <ol class="cut-lines">
      {cuts.map((cut) => {
        const done = isTicked(plan, cut.id);
        return (
          <li key={cut.id}>
            <button
              type="button"
              class={done ? 'cut-line done' : 'cut-line'}
              aria-pressed={done}
              onClick={() => tick(cut, !done)}
            >
              <span class="cut-number">
                {done && <Icon name="tick" />}
                <span class={done ? 'unseen' : ''}>{cut.number}</span>
              </span>
              <span>
                <strong>{cut.main}</strong>
                <span class="small">{cut.small}</span>
              </span>
            </button>
          </li>
        );
      })}
    </ol>
  );
}
