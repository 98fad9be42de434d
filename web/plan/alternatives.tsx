import type { VNode } from 'preact';
import type { Pin, PlannedCard, PlannedLayer } from '../../server/contract/plans.ts';
import { sidesOf } from '../pad/sides.ts';
import { words } from '../words.ts';
import { companions } from '../wire/shelves.ts';
import type { OnTable } from './table-of.ts';
import { withPin } from './wishes.ts';

interface Props {
  readonly card: PlannedCard;
  readonly table: OnTable;
  readonly layer: PlannedLayer;
  readonly pins: readonly Pin[];
  readonly pin: (pins: Pin[]) => void;
}

/** What else could lie in a layer, best first; a tap puts it there and plans the rest around it. */
export function Alternatives(props: Props): VNode {
  const { layer } = props;
  return (
    <section class="alternatives" aria-label={words.plan.instead}>
      <h3>{words.plan.instead}</h3>
      {layer.side === undefined ? <OtherSupplies {...props} /> : <OtherSides {...props} />}
    </section>
  );
}

function OtherSides({ card, table, layer, pins, pin }: Props): VNode {
  const beside = card.layers.find((one) => one.side !== undefined && one.layer !== layer.layer);
  const order = new Map(
    (beside?.side === undefined
      ? []
      : (companions.at(`${table.pad.id}/${beside.side}`).value.value ?? [])
    ).map(({ side, score }) => [side, score]),
  );
  const others = sidesOf(table.pad)
    .filter(({ side }) => side.id !== layer.side)
    .sort((a, b) => (order.get(b.side.id) ?? 0) - (order.get(a.side.id) ?? 0));
  return (
    <ul class="swatch-row">
      {others.map(({ side, sheet, face }) => (
        <li key={side.id}>
          <button
            type="button"
            class="swatch-button"
            onClick={() =>
              pin(withPin(pins, { card: card.number, layer: layer.layer, side: side.id }))
            }
          >
            <img
              src={side.swatch}
              alt={words.plan.use(words.pad.sideName(sheet.label, face))}
              loading="lazy"
              width="84"
              height="84"
            />
          </button>
        </li>
      ))}
    </ul>
  );
}

function OtherSupplies({ card, table, layer, pins, pin }: Props): VNode {
  const others = table.supplies.filter(
    ({ kind, id }) => kind === 'cardstock' && id !== layer.supply,
  );
  if (others.length === 0) return <p>{words.plan.noCardstock}</p>;
  return (
    <ul class="swatch-row">
      {others.map((supply) => (
        <li key={supply.id}>
          <button
            type="button"
            class="supply-button"
            onClick={() =>
              pin(withPin(pins, { card: card.number, layer: layer.layer, supply: supply.id }))
            }
          >
            <span class="chip big" style={{ background: supply.colour.hex }} />
            {supply.name}
          </button>
        </li>
      ))}
    </ul>
  );
}
