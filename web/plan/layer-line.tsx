import type { ComponentChildren, VNode } from 'preact';
import type { Pin, PlannedCard, PlannedLayer } from '../../server/contract/plans.ts';
import { pieceFor } from '../lengths/lengths.ts';
import { Icon } from '../table/icon.tsx';
import { ruler } from '../table/settings.ts';
import { sentence } from '../words/grammar.ts';
import { planWords } from '../words/plan.ts';
import { words } from '../words/words.ts';
import { stuffOf } from './stuff-of.ts';
import type { OnTable } from './table-of.ts';
import { pinOf, withoutPin, withPin } from './wishes.ts';

interface Props {
  readonly card: PlannedCard;
  readonly table: OnTable;
  readonly layer: PlannedLayer;
  readonly pins: readonly Pin[];
  readonly pin: (pins: Pin[]) => void;
  readonly open: boolean;
  readonly toggle: () => void;
  readonly children?: ComponentChildren;
}

/** One layer: what it is made of, its size, swap it, keep it. */
export function LayerLine({ card, table, layer, pins, pin, open, toggle, children }: Props): VNode {
  const stuff = stuffOf(layer, table);
  const kept = pinOf(pins, card.number, layer.layer);
  const role = sentence(layer.called ?? words.layerName(layer.layer));
  return (
    <li class="layer-line">
      <button type="button" class="layer-stuff" aria-expanded={open} onClick={toggle}>
        {stuff.picture ? (
          <img src={stuff.picture} alt="" width="56" height="56" />
        ) : (
          <span class="chip big" style={{ background: stuff.hex ?? 'transparent' }} />
        )}
        <span>
          <strong>{role}</strong>
          <span>{stuff.name}</span>
          <span class="small">{pieceFor(layer.size, ruler.value)}</span>
        </span>
        <span class="swap">
          <Icon name="turn" /> {planWords.swap}
        </span>
      </button>
      <button
        type="button"
        class="round"
        aria-pressed={kept !== undefined}
        aria-label={planWords.keep(role)}
        disabled={kept === undefined && pinFor(card, layer) === null}
        onClick={() => {
          const fresh = pinFor(card, layer);
          if (kept) pin(withoutPin(pins, card.number, layer.layer));
          else if (fresh) pin(withPin(pins, fresh));
        }}
      >
        <Icon name="pin" />
      </button>
      {children}
    </li>
  );
}

function pinFor(card: PlannedCard, layer: PlannedLayer): Pin | null {
  const at = { card: card.number, layer: layer.layer };
  if (layer.side !== undefined) return { ...at, side: layer.side };
  if (layer.supply !== undefined) return { ...at, supply: layer.supply };
  return null;
}
