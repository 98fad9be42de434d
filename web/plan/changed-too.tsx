import type { VNode } from 'preact';
import { Icon } from '../table/icon.tsx';
import { planWords } from '../words/plan.ts';

interface Props {
  readonly cards: readonly number[];
  readonly back: () => void;
  readonly keep: () => void;
  /** Has what she wished with fewer cards changed; null where it takes them all. */
  readonly fewer: (() => void) | null;
}

/** Says which other cards took other papers because of what she wished, and takes it back with one touch. */
export function ChangedToo({ cards, back, keep, fewer }: Props): VNode {
  return (
    <div class="changed-too">
      <Icon name="turn" />
      <p>{planWords.changed.too(cards)}</p>
      <button type="button" class="round" aria-label={planWords.changed.keep} onClick={keep}>
        <Icon name="close" />
      </button>
      <div class="changed-ways">
        <button type="button" class="button quiet" onClick={back}>
          <Icon name="undo" /> {planWords.changed.back}
        </button>
        {fewer && (
          <button type="button" class="button quiet" onClick={fewer}>
            <Icon name="pin" /> {planWords.changed.fewer}
          </button>
        )}
      </div>
    </div>
  );
}
