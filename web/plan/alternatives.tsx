import type { VNode } from 'preact';
import type { Pin, PlannedCard, PlannedLayer } from '../../server/contract/plans.ts';
import type { LayerChoice } from '../../server/contract/plans-again.ts';
import { Once } from '../table/waiting.tsx';
import { planWords } from '../words/plan.ts';
import { words } from '../words/words.ts';
import { sideIn } from '../pad/sides.ts';
import { layerChoices } from '../wire/shelves.ts';
import { stuffOf, type Stuff } from './stuff-of.ts';
import type { OnTable } from './table-of.ts';
import { withoutPin, withPin } from './wishes.ts';

interface Props {
  readonly card: PlannedCard;
  readonly table: OnTable;
  readonly layer: PlannedLayer;
  readonly pins: readonly Pin[];
  readonly pin: (pins: Pin[]) => void;
}

/** What else could lie in a layer, best first; a tap puts it there and plans the rest around it. */
export function Alternatives(props: Props): VNode {
  const { table, card, layer } = props;
  const key = `${table.plan.id}/${card.id}/${layer.layer}`;
  return (
    <section class="alternatives" aria-label={planWords.instead}>
      <h3>{planWords.instead}</h3>
      <Once
        of={layerChoices.at(key)}
        again={() => void layerChoices.fresh(key)}
        about={`${card.number}/${layer.layer}`}
      >
        {(choices) => (
          <Choices
            {...props}
            now={choices.find((choice) => choice.now)?.score ?? card.score}
            choices={choices.filter((choice) => !choice.now)}
          />
        )}
      </Once>
    </section>
  );
}

interface ChoicesProps extends Props {
  readonly choices: readonly LayerChoice[];
  /** What the card scores as it is. */
  readonly now: number;
}

function Choices(props: ChoicesProps): VNode {
  const { choices, layer } = props;
  const allowed = choices.filter((choice) => choice.allowed);
  const forbidden = choices.filter((choice) => !choice.allowed);
  if (choices.length === 0)
    return <p>{layer.side === undefined ? planWords.noCardstock : planWords.noOtherPaper}</p>;
  return (
    <>
      <ul class="swatch-row">
        {allowed.map((choice) => (
          <li key={keyOf(choice)}>
            <ChoiceButton {...props} choice={choice} />
          </li>
        ))}
      </ul>
      {forbidden.length > 0 && (
        <details class="more-reasons">
          <summary>{planWords.forbidden(forbidden.length)}</summary>
          {groupsOf(forbidden).map(([because, some]) => (
            <div key={because} class="forbidden">
              <p class="small">{because}</p>
              <ul class="swatch-row">
                {some.map((choice) => (
                  <li key={keyOf(choice)}>
                    <ChoiceButton {...props} choice={choice} />
                  </li>
                ))}
              </ul>
            </div>
          ))}
        </details>
      )}
    </>
  );
}

/** A forbidden one can be had when the pins in its way are taken out with the same touch. */
function ChoiceButton({
  choice,
  card,
  table,
  layer,
  pins,
  pin,
  now,
}: ChoicesProps & { choice: LayerChoice }): VNode {
  const stuff = stuffOf(choice, table);
  const colours = sideIn(table.pad, choice.side)?.side.palette ?? [];
  const against = planWords.against(choice.score, now);
  const { side, supply } = choice;
  const wanted: Pin = {
    card: card.number,
    layer: layer.layer,
    ...(side === undefined ? { supply } : { side }),
  };
  const free = choice.forbiddenBy.reduce<readonly Pin[]>(
    (left, one) => withoutPin(left, one.card, one.layer),
    pins,
  );
  return (
    <button
      type="button"
      class="swatch-button named"
      disabled={!choice.allowed && choice.forbiddenBy.length === 0}
      onClick={() => pin(withPin(free, wanted))}
    >
      <span class="unseen">{planWords.use}</span> <Picture stuff={stuff} />
      <strong class="small">{stuff.name}</strong>{' '}
      {colours.length > 0 && <span class="small">{planWords.coloursOf(colours)}</span>}{' '}
      <span class="score-words">{words.goes(choice.score)}</span>{' '}
      <span class="against">
        <span class="against-bar" aria-hidden="true">
          <span style={{ width: `${100 * choice.score}%` }} />
          <i style={{ left: `${100 * now}%` }} />
        </span>
        <span class="small">{against}</span>
      </span>
      {!choice.allowed && <span class="unseen">{planWords.allTheSame}</span>}
    </button>
  );
}

function Picture({ stuff }: { stuff: Stuff }): VNode {
  if (stuff.picture === undefined)
    return <span class="swatch-colour" style={{ background: stuff.hex }} />;
  return <img src={stuff.picture} alt="" loading="lazy" width="96" height="96" />;
}

/** What one reason forbids stands together. */
function groupsOf(choices: readonly LayerChoice[]): [string, LayerChoice[]][] {
  const groups = new Map<string, LayerChoice[]>();
  for (const choice of choices) {
    const because = choice.because ?? '';
    groups.set(because, [...(groups.get(because) ?? []), choice]);
  }
  return [...groups];
}

function keyOf({ side, supply }: LayerChoice): string {
  return side ?? supply ?? '';
}
