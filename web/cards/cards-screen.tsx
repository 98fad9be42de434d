import type { VNode } from 'preact';
import type { LayoutListing } from '../../server/contract/layouts.ts';
import { remembered } from '../table/memory.ts';
import { ruler } from '../table/settings.ts';
import { OpenEditor } from '../layouts/open-editor.tsx';
import { Once } from '../table/waiting.tsx';
import { cardsWords } from '../words/cards.ts';
import { layouts, pads } from '../wire/shelves.ts';
import { Batch } from './batch.tsx';
import { cardSizesOf, type CardSize } from './card-sizes.ts';
import { countsOf } from './counts.ts';
import { LayoutCard } from './layout-card.tsx';

/** The size of card that she last looked at; empty until she chose one. */
const lastSize = remembered('card-size', '', (value) => typeof value === 'string');

/** Choosing which cards to make, and how many of each. */
export function CardsScreen({ pad }: { pad: string }): VNode {
  return (
    <div class="screen with-bar">
      <h1>{cardsWords.heading}</h1>
      <p class="lead">{cardsWords.lead}</p>
      <Once of={layouts.at('all')} again={() => void layouts.fresh('all')}>
        {(list) => (
          <>
            <Layouts pad={pad} list={list} />
            <Once of={pads.at(pad)} again={() => void pads.fresh(pad)}>
              {(whole) => <Batch pad={whole} layouts={list} />}
            </Once>
          </>
        )}
      </Once>
    </div>
  );
}

function Layouts({ pad, list }: { pad: string; list: readonly LayoutListing[] }): VNode {
  const sizes = cardSizesOf(list);
  const fits = ruler.value === 'mm';
  const shown =
    sizes.find(({ key }) => key === lastSize.value) ??
    sizes.find(({ metric }) => metric === fits) ??
    sizes[0];
  return (
    <>
      <fieldset class="choices">
        <legend>{cardsWords.size}</legend>
        {sizes.map((size) => (
          <label key={size.key} class="choice">
            <input
              type="radio"
              name="card-size"
              checked={size === shown}
              onChange={() => {
                lastSize.value = size.key;
              }}
            />
            <span>
              {size.name} {chosenOf(size, pad)}
            </span>
          </label>
        ))}
      </fieldset>
      {shown?.layouts[0] && (
        <div class="own-card">
          <OpenEditor from={shown.layouts[0]} pad={pad} empty />
          <span class="small">{cardsWords.ownLead}</span>
        </div>
      )}
      <ul class="layouts">
        {shown?.layouts.map((layout) => (
          <li key={layout.id}>
            <LayoutCard layout={layout} pad={pad} />
          </li>
        ))}
      </ul>
    </>
  );
}

/** How many cards of a size are in the batch, so that those out of sight are not forgotten. */
function chosenOf({ layouts: some }: CardSize, pad: string): string {
  const counts = countsOf(pad);
  const sum = some.reduce((so, { id }) => so + (counts[id] ?? 0), 0);
  return sum === 0 ? '' : cardsWords.chosenOf(sum);
}
