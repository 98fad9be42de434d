import type { VNode } from 'preact';
import type { BestSupplies, Purchase } from '../../server/contract/supplies.ts';
import { Icon } from '../table/icon.tsx';
import { words } from '../words.ts';

const MOST_SHOWN = 3;

/** The best of what she has: cardstock for mats and bases, inks for the accents. */
export function BestBoard({ best }: { best: BestSupplies }): VNode {
  const say = words.match.best;
  const stock = best.cardstock.filter(({ use }) => use !== 'odd').slice(0, MOST_SHOWN);
  const inks = best.accents.filter((one) => one.best !== null && one.best.verdict !== 'apart');
  return (
    <div class="best-board">
      <h3>{say.heading}</h3>
      <h4>{say.cardstock}</h4>
      {stock.length === 0 && <p>{say.noCardstock}</p>}
      <ul class="best-list">
        {stock.map(({ supply, name, use, why }) => (
          <li key={supply}>
            <strong>{name}</strong>: {say.uses[use]}
            <span class="small">{why}</span>
          </li>
        ))}
      </ul>
      <h4>{say.inks}</h4>
      {inks.length === 0 && <p>{say.noInk}</p>}
      <ul class="best-list">
        {inks.map(({ accent, cards, best: ink }) => (
          <li key={accent.hex}>
            <span class="chip" style={{ background: accent.hex }} /> <strong>{ink!.name}</strong>{' '}
            {say.forAccent(accent.name, cards)}
            <span class="small">{ink!.reason}</span>
          </li>
        ))}
      </ul>
      <ShoppingList missing={best.missing} />
      <p class="caution">
        <Icon name="caution" /> {best.caution}
      </p>
    </div>
  );
}

/** What is missing, in words that any shop understands; one line may serve several cards. */
function ShoppingList({ missing }: { missing: readonly Purchase[] }): VNode {
  const say = words.match.shopping;
  return (
    <>
      <h4>{say.heading}</h4>
      {missing.length === 0 ? (
        <p>{say.nothing}</p>
      ) : (
        <ul class="best-list shopping">
          {missing.map(({ kind, colour, cards, area }) => (
            <li key={`${kind} ${colour.hex}`}>
              <span class="chip big" style={{ background: colour.hex }} />
              <span>
                <strong>{say.thing(colour.name, kind)}</strong>
                <span class="small">{say.details(colour.lab, cards, area)}</span>
              </span>
            </li>
          ))}
        </ul>
      )}
    </>
  );
}
