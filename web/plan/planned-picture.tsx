import type { VNode } from 'preact';
import type { Pin, PlannedCard } from '../../server/contract/plans.ts';
import { Icon } from '../table/icon.tsx';
import { planWords } from '../words/plan.ts';
import { words } from '../words/words.ts';
import { CardImage } from './card-image.tsx';
import { layoutOf } from './layout-of.ts';
import type { OnTable } from './table-of.ts';

interface Props {
  readonly card: PlannedCard;
  readonly table: OnTable;
  readonly pins: readonly Pin[];
  /** Whether the last wish gave it other papers. */
  readonly changed: boolean;
  readonly open: () => void;
}

/** One planned card: its picture at true proportion, how well it goes together, the sentence why. */
export function PlannedPicture({ card, table, pins, changed, open }: Props): VNode {
  const { plan } = table;
  const pinned = pins.some((pin) => pin.card === card.number);
  return (
    <button type="button" class="planned-card" onClick={open}>
      <CardImage card={card} table={table} pins={pins} nearness="table" silent />
      <span class="planned-line">
        <strong>{planWords.card(card.number)}</strong>
        <span class="score-words">{words.goes(card.score)}</span>
      </span>
      <span class="small">{card.short}</span>
      <span class="unseen">{layoutOf(table, card)?.name}</span>
      <span class="tags">
        {plan.weakest === card.number && <span class="tag">{planWords.weakest}</span>}
        {changed && (
          <span class="tag changed">
            <Icon name="turn" /> <span class="tag-words">{planWords.changed.mark}</span>
          </span>
        )}
        {pinned && (
          <span class="tag pinned">
            <Icon name="pin" /> <span class="tag-words">{planWords.pinned}</span>
          </span>
        )}
      </span>
    </button>
  );
}
