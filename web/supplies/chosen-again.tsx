import type { VNode } from 'preact';
import type { Supply } from '../../server/contract/supplies.ts';
import { Icon } from '../table/icon.tsx';
import { choosingWords } from '../words/choosing.ts';

interface Props {
  readonly added: readonly Supply[];
  readonly back: () => void;
}

/** Says that cardstock and inks were chosen again by themselves, and takes it back with one touch. */
export function ChosenAgain({ added, back }: Props): VNode {
  return (
    <div class="choose-again" role="status">
      <p>{choosingWords.chosen(added.map(({ name }) => name))}</p>
      <button type="button" class="button quiet" onClick={back}>
        <Icon name="undo" /> {choosingWords.back}
      </button>
    </div>
  );
}
