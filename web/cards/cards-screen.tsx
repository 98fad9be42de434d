import { signal } from '@preact/signals';
import type { ComponentChildren, VNode } from 'preact';
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
import { justKept } from './just-kept.ts';
import { LayoutCard } from './layout-card.tsx';
import { paperCountsOf, withPapers } from './paper-counts.ts';

/** The size of card that she last looked at; empty until she chose one. */
const lastSize = remembered('card-size', '', (value) => typeof value === 'string');

/** How many papers the layouts that she looks at take; null for all of them. */
const papersWanted = signal<number | null>(null);

/** Choosing which cards to make, and how many of each. */
export function CardsScreen({ pad }: { pad: string }): VNode {
  return (
    <div class="screen with-bar">
      <Once
        of={layouts.at('all')}
        again={() => void layouts.fresh('all')}
        heading={cardsWords.heading}
      >
        {(list) => (
          <>
            <Layouts pad={pad} list={list} />
            <Once of={pads.at(pad)} again={() => void pads.fresh(pad)}>
              {(whole) => <Batch pad={whole} layouts={list} size={lastSize.value} />}
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
  const ofSize = shown?.layouts ?? [];
  return (
    <>
      <div class="heading-line">
        <h1>{cardsWords.heading}</h1>
        {ofSize[0] && <OpenEditor from={ofSize[0]} pad={pad} empty />}
      </div>
      <p>{cardsWords.lead}</p>
      <div class="layout-filters">
        <fieldset class="choices">
          <legend>{cardsWords.size}</legend>
          {sizes.map((size) => (
            <Choice
              key={size.key}
              name="card-size"
              checked={size === shown}
              choose={() => {
                lastSize.value = size.key;
              }}
            >
              {size.name} {chosenOf(size, pad)}
            </Choice>
          ))}
        </fieldset>
        <PaperCounts of={ofSize} />
      </div>
      <ul class="layouts">
        {withPapers(ofSize, papersWanted.value, justKept.value).map((layout) => (
          <li key={layout.id}>
            <LayoutCard layout={layout} pad={pad} />
          </li>
        ))}
      </ul>
    </>
  );
}

/** Leaves through the layouts by how many papers one card takes. */
function PaperCounts({ of }: { of: readonly LayoutListing[] }): VNode | null {
  const counts = paperCountsOf(of);
  if (counts.length < 2) return null;
  const wanted = papersWanted.value;
  const all = wanted === null || !counts.includes(wanted);
  return (
    <fieldset class="choices">
      <legend>{cardsWords.papersOf}</legend>
      <Choice name="card-papers" checked={all} choose={() => (papersWanted.value = null)}>
        {cardsWords.allPapers}
      </Choice>
      {counts.map((count) => (
        <Choice
          key={count}
          name="card-papers"
          checked={wanted === count}
          choose={() => (papersWanted.value = count)}
        >
          {count}
        </Choice>
      ))}
    </fieldset>
  );
}

function Choice({
  name,
  checked,
  choose,
  children,
}: {
  name: string;
  checked: boolean;
  choose: () => void;
  children: ComponentChildren;
}): VNode {
  return (
    <label class="choice">
      <input type="radio" name={name} checked={checked} onChange={choose} />
      <span>{children}</span>
    </label>
  );
}

/** How many cards of a size are in the batch, so that those out of sight are not forgotten. */
function chosenOf({ layouts: some }: CardSize, pad: string): string {
  const counts = countsOf(pad);
  const sum = some.reduce((so, { id }) => so + (counts[id] ?? 0), 0);
  return sum === 0 ? '' : cardsWords.chosenOf(sum);
}
