import type { VNode } from 'preact';
import type { LayoutListing } from '../../server/contract/layouts.ts';
import { Once } from '../table/waiting.tsx';
import { words } from '../words.ts';
import { layouts, pads } from '../wire/shelves.ts';
import { Batch } from './batch.tsx';
import { LayoutCard } from './layout-card.tsx';
import { sizeFor } from '../lengths/lengths.ts';
import { ruler } from '../table/settings.ts';

/** Choosing which cards to make, and how many of each. */
export function CardsScreen({ pad }: { pad: string }): VNode {
  return (
    <div class="screen with-bar">
      <h1>{words.cards.heading}</h1>
      <p class="lead">{words.cards.lead}</p>
      <Once of={layouts.at('all')} again={() => void layouts.fresh('all')}>
        {(list) => (
          <>
            {bySize(list).map(([size, some]) => (
              <section key={size} aria-label={size}>
                <h2>{words.cards.size(sizeFor(some[0]!.card, ruler.value))}</h2>
                <ul class="layouts">
                  {some.map((layout) => (
                    <li key={layout.id}>
                      <LayoutCard layout={layout} pad={pad} />
                    </li>
                  ))}
                </ul>
              </section>
            ))}
            <Once of={pads.at(pad)} again={() => void pads.fresh(pad)}>
              {(whole) => <Batch pad={whole} layouts={list} />}
            </Once>
          </>
        )}
      </Once>
    </div>
  );
}

function bySize(list: readonly LayoutListing[]): [string, LayoutListing[]][] {
  const sizes = new Map<string, LayoutListing[]>();
  for (const layout of list) {
    const size = `${layout.card.width} x ${layout.card.height}`;
    sizes.set(size, [...(sizes.get(size) ?? []), layout]);
  }
  return [...sizes];
}
