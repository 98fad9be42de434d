import type { VNode } from 'preact';
import { Icon } from '../table/icon.tsx';
import { guideWords } from '../words/guide.ts';
import type { Stack } from './step.ts';
import { isTicked } from './ticked.ts';

interface Props {
  readonly plan: string;
  readonly stacks: readonly Stack[];
  readonly tick: (stack: Stack, done: boolean) => void;
}

/** For several people: the stacks that are cut by these cuts, one after the other. */
export function Stacks({ plan, stacks, tick }: Props): VNode | null {
  if (stacks.length === 0) return null;
  return (
    <div class="chapter">
      <h3>{guideWords.stacks(stacks.length)}</h3>
      <ul class="cut-lines">
        {stacks.map((stack) => {
          const done = isTicked(plan, stack.id);
          return (
            <li key={stack.id}>
              <button
                type="button"
                class={done ? 'cut-line done' : 'cut-line'}
                aria-pressed={done}
                onClick={() => tick(stack, !done)}
              >
                <span class="cut-number square">
                  {done && <Icon name="tick" />}
                  <span class={done ? 'unseen' : ''}>{stack.number}</span>
                </span>
                <span>{guideWords.stack(stack.of)}</span>
              </button>
            </li>
          );
        })}
      </ul>
    </div>
  );
}
