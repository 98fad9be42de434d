import type { VNode } from 'preact';
import { Icon } from '../table/icon.tsx';
import { planWords } from '../words/plan.ts';
import type { Changed } from './use-wishes.ts';

interface Props {
  readonly changed: Pick<Changed, 'cards' | 'too' | 'bySheets'>;
  /** Cards that the best plan would make otherwise, where they were left as they lay. */
  readonly otherwise: readonly number[];
  readonly back: () => void;
  readonly keep: () => void;
  /** Has all papers chosen anew; null where they are. */
  readonly anew: (() => void) | null;
}

/** Says which cards changed because of what she wished, and which were left as they lay; takes either back with one touch. */
export function ChangedToo({ changed, otherwise, back, keep, anew }: Props): VNode {
  return (
    <div class="changed-too">
      <Icon name="turn" />
      <p>{planWords.changed.said(changed, otherwise)}</p>
      <button type="button" class="round" aria-label={planWords.changed.keep} onClick={keep}>
        <Icon name="close" />
      </button>
      <div class="changed-ways">
        <button type="button" class="button quiet" onClick={back}>
          <Icon name="undo" /> {planWords.changed.back}
        </button>
        {anew && (
          <button type="button" class="button quiet" onClick={anew}>
            <Icon name="turn" /> {planWords.changed.anew}
          </button>
        )}
      </div>
    </div>
  );
}
