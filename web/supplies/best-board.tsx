import type { VNode } from 'preact';
import type { BestSupplies, Purchase, StockTaken } from '../../server/contract/supplies.ts';
import { Icon } from '../table/icon.tsx';
import { matchWords } from '../words/match.ts';
import { BestStock } from './best-stock.tsx';
import { GreetingInks } from './greeting-inks.tsx';
import { Why } from './why.tsx';

interface Props {
  readonly best: BestSupplies;
  readonly inches: boolean;
  readonly hasInk: boolean;
  /** Whether it was asked of one colour of a paper, not of all of it. */
  readonly ofSpot?: boolean;
}

/** The best of what she has: cardstock for mats and bases, inks for the accents. */
export function BestBoard({ best, inches, hasInk, ofSpot = false }: Props): VNode {
  const say = matchWords.best;
  const inks = best.accents.filter((one) => one.best !== null && one.best.verdict !== 'apart');
  return (
    <div class="best-board">
      {best.takes.length > 0 ? (
        <Takes takes={best.takes} />
      ) : (
        <BestStock best={best} ofSpot={ofSpot} />
      )}
      <h3>{ofSpot ? say.inksForSpot : say.inks}</h3>
      {inks.length === 0 && (
        <p>{!hasInk ? say.noneOfAll.ink : ofSpot ? say.noneForSpot.ink : say.noInk}</p>
      )}
      <ul class="best-list shopping">
        {inks.map(({ accent, cards, best: ink }) => (
          <li key={accent.hex}>
            <span class="chip big" style={{ background: accent.hex }} />
            <div>
              <strong>{ink!.name}</strong> {say.forAccent(accent.name, cards)}:{' '}
              {matchWords.verdicts[ink!.verdict]}
              <Why of={ink!.name} text={ink!.reason} measured={ink} />
            </div>
          </li>
        ))}
      </ul>
      {best.takes.length > 0 && <GreetingInks greetings={best.greetings} />}
      <ShoppingList missing={best.missing} inches={inches} />
      <p class="caution">
        <Icon name="caution" /> {best.caution}
      </p>
    </div>
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
          {missing.map(({ kind, colour, area, more, ...rest }) => (
            <li key={`${kind} ${colour.hex}`}>
              <span class="chip big" style={{ background: colour.hex }} />
              <div>
                <strong>{more === null ? say.thing(colour.name, kind) : more.name}</strong>
                <span class="small">
                  {say.details(rest, area === null ? null : say.area(area, inches))}
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
