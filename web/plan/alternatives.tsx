import type { VNode } from 'preact';
import type { Pin, PlannedCard, PlannedLayer } from '../../server/contract/plans.ts';
import type { LayerChoice } from '../../server/contract/plans-again.ts';
import { Once } from '../table/waiting.tsx';
import { planWords } from '../words/plan.ts';
import { words } from '../words/words.ts';
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
      <Once of={layerChoices.at(key)} again={() => void layerChoices.fresh(key)}>
        {(choices) => <Choices {...props} choices={choices.filter(({ now }) => !now)} />}
      </Once>
    </section>
  );
}

function Choices(props: Props & { choices: readonly LayerChoice[] }): VNode {
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
}: Props & { choice: LayerChoice }): VNode {
  const stuff = stuffOf(choice, table);
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
      aria-label={
        choice.allowed
          ? planWords.use(stuff.name, choice.score)
          : planWords.useAllTheSame(stuff.name, choice.score)
      }
      onClick={() => pin(withPin(free, wanted))}
    >
      <Picture stuff={stuff} />
      <span class="small">{stuff.name}</span>{' '}
      <span class="score-words">{words.goes(choice.score)}</span>
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
