import type { VNode } from 'preact';
import type { Plan } from '../../server/contract/plans.ts';
import type { Supply } from '../../server/contract/supplies.ts';
import { Icon } from '../table/icon.tsx';
import { choosingWords } from '../words/choosing.ts';
import { newerSupplies } from './newer-supplies.ts';

interface Props {
  readonly plan: Plan;
  readonly supplies: readonly Supply[];
  readonly busy: boolean;
  readonly choose: () => void;
}

/** A plan was made from the shelf of its day: when that has changed since, one touch chooses anew. */
export function ChooseAgain({ plan, supplies, busy, choose }: Props): VNode | null {
  const { added, gone } = newerSupplies(plan, supplies);
  if (added.length === 0 && !gone) return null;
  return (
    <div class="choose-again">
      <ul class="choose-again-colours" aria-hidden="true">
        {added.slice(0, MOST_SHOWN).map(({ id, kind, colour }) => (
          <li key={id} class={`chip ${kind}`} style={{ background: colour.hex }} />
        ))}
      </ul>
      <p>
        {added.length > 0 && choosingWords.added(added.map(({ name }) => name))}{' '}
        {gone && choosingWords.gone}
      </p>
      <button type="button" class="button" disabled={busy} onClick={choose}>
        <Icon name="turn" /> {choosingWords.again}
      </button>
    </div>
  );
}

const MOST_SHOWN = 4;
