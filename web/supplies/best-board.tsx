import type { VNode } from 'preact';
import type { BestSupplies, Purchase, StockTaken } from '../../server/contract/supplies.ts';
import { Icon } from '../table/icon.tsx';
import { matchWords } from '../words/match.ts';

const MOST_SHOWN = 3;

/** The best of what she has: cardstock for mats and bases, inks for the accents. */
export function BestBoard({ best, inches }: { best: BestSupplies; inches: boolean }): VNode {
  const say = matchWords.best;
  const stock = best.cardstock.filter(({ use }) => use !== 'odd').slice(0, MOST_SHOWN);
  const inks = best.accents.filter((one) => one.best !== null && one.best.verdict !== 'apart');
  return (
    <div class="best-board">
      {best.takes.length > 0 ? <Takes takes={best.takes} /> : <BestStock stock={stock} />}
      <h3>{say.inks}</h3>
      {inks.length === 0 && <p>{say.noInk}</p>}
      <ul class="best-list shopping">
        {inks.map(({ accent, cards, best: ink }) => (
          <li key={accent.hex}>
            <span class="chip big" style={{ background: accent.hex }} />
            <div>
              <strong>{ink!.name}</strong> {say.forAccent(accent.name, cards)}:{' '}
              {matchWords.verdicts[ink!.verdict]}
              <Why of={ink!.name} text={ink!.reason} />
            </div>
          </li>
        ))}
      </ul>
      <ShoppingList missing={best.missing} inches={inches} />
      <p class="caution">
        <Icon name="caution" /> {best.caution}
      </p>
    </div>
  );
}

/** The best of her cardstock for mats and bases on a paper. */
function BestStock({ stock }: { stock: BestSupplies['cardstock'] }): VNode {
  const say = matchWords.best;
  return (
    <>
      <h3>{say.cardstock}</h3>
      {stock.length === 0 && <p>{say.noCardstock}</p>}
      <ul class="best-list">
        {stock.map(({ supply, name, use, why }) => (
          <li key={supply}>
            <strong>{name}</strong>: {say.uses[use]}
            <Why of={name} text={why} />
          </li>
        ))}
      </ul>
    </>
  );
}

/** The whole sentence is at hand; in every line of a list it would be read once too often. */
function Why({ of, text }: { of: string; text: string }): VNode {
  return (
    <details class="small figures">
      <summary>
        {matchWords.why}
        <span class="unseen">: {of}</span>
      </summary>
      <p>{text}</p>
    </details>
  );
}

/** How many sheets of which cardstock planned cards take, and how many are left. */
function Takes({ takes }: { takes: readonly StockTaken[] }): VNode {
  const say = matchWords.takes;
  return (
    <>
      <h3>{say.heading}</h3>
      <ul class="best-list shopping">
        {takes.map(({ name, colour, supply, sheets, left }) => (
          <li key={name}>
            <span class="chip big" style={{ background: colour.hex }} />
            <span>
              <strong>{name}</strong>
              <span class="small">
                {sheets === null ? say.tooLarge : say.sheets(sheets.count, sheets.size)}
                {supply !== null && left !== null && `; ${say.left(left)}`}
              </span>
            </span>
          </li>
        ))}
      </ul>
      {takes.some(({ supply, left }) => supply !== null && left === null) && (
        <p class="small">{say.unsaid}</p>
      )}
    </>
  );
}

/** What is missing, in words that any shop understands; one line may serve several cards. */
function ShoppingList({
  missing,
  inches,
}: {
  missing: readonly Purchase[];
  inches: boolean;
}): VNode {
  const say = matchWords.shopping;
  return (
    <>
      <h3>{say.heading}</h3>
      {missing.length === 0 ? (
        <p>{say.nothing}</p>
      ) : (
        <ul class="best-list shopping">
          {missing.map(({ kind, colour, cards, area, sheets, more }) => (
            <li key={`${kind} ${colour.hex}`}>
              <span class="chip big" style={{ background: colour.hex }} />
              <div>
                <strong>{more === null ? say.thing(colour.name, kind) : more.name}</strong>
                <span class="small">
                  {say.details(cards, area === null ? null : say.area(area, inches), sheets)}
                </span>
                <details class="small figures">
                  <summary>{matchWords.figures}</summary>
                  <p>{say.measured(colour.lab)}</p>
                </details>
              </div>
            </li>
          ))}
        </ul>
      )}
    </>
  );
}
