import type { VNode } from 'preact';
import { useEffect, useRef } from 'preact/hooks';
import type { LayoutListing } from '../../server/contract/layouts.ts';
import { Icon } from '../table/icon.tsx';
import { Typed } from '../table/typed.tsx';
import { cardsWords } from '../words/cards.ts';
import { OpenEditor } from '../layouts/open-editor.tsx';
import { justKept } from './just-kept.ts';
import { countsOf, MOST_OF_ONE, setCount } from './counts.ts';

/** A layout as a drawn card with its count below. */
export function LayoutCard({ layout, pad }: { layout: LayoutListing; pad: string }): VNode {
  const count = countsOf(pad)[layout.id] ?? 0;
  const kept = justKept.value === layout.id;
  const place = useRef<HTMLElement>(null);
  useEffect(() => {
    if (kept) place.current?.scrollIntoView({ block: 'center' });
  }, [kept]);
  return (
    <article class={count > 0 ? 'layout chosen' : 'layout'} aria-label={layout.name} ref={place}>
      <button
        type="button"
        class="layout-picture"
        aria-label={cardsWords.more(layout.name)}
        onClick={() => setCount(pad, layout.id, count + 1)}
      >
        <img src={drawn(layout.drawing)} alt="" loading="lazy" />
      </button>
      <div class="layout-words">
        <strong onClick={() => setCount(pad, layout.id, count + 1)}>{layout.name}</strong>
        <OpenEditor from={layout} pad={pad} />
        <span class="small">{cardsWords.papers(layout.papers)}</span>
        {kept && (
          <span class="tag kept">
            <Icon name="tick" /> {cardsWords.kept}
          </span>
        )}
      </div>
      <div class="counter">
        <button
          type="button"
          class="round"
          disabled={count === 0}
          aria-label={cardsWords.fewer(layout.name)}
          onClick={() => setCount(pad, layout.id, count - 1)}
        >
          <Icon name="minus" />
        </button>
        <Typed
          class="count"
          type="number"
          inputMode="numeric"
          min="0"
          max={MOST_OF_ONE}
          value={count}
          aria-label={cardsWords.howMany(layout.name)}
          settle={(many) => setCount(pad, layout.id, Number(many) || 0)}
        />
        <button
          type="button"
          class="round"
          disabled={count === MOST_OF_ONE}
          aria-label={cardsWords.more(layout.name)}
          onClick={() => setCount(pad, layout.id, count + 1)}
        >
          <Icon name="plus" />
        </button>
      </div>
    </article>
  );
}

/** A drawing as the address of an image, so that nothing in it can run. */
export function drawn(svg: string): string {
  return `data:image/svg+xml,${encodeURIComponent(svg)}`;
}
