import { useState } from 'preact/hooks';
import type { ComponentChildren, VNode } from 'preact';
import { guideWords } from '../words/guide.ts';
import { schemeWords } from '../words/scheme.ts';
import { ForPeople } from './for-people.tsx';
import { OwnScheme } from './own-scheme.tsx';
import type { GuideBook } from './steps-of.ts';

/** How else the batch could be cut: for a class, in other stacks, by a table of her own. */
export function HowElse({ book }: { book: GuideBook }): VNode {
  return (
    <section class="what-else" aria-labelledby="how-else">
      <h2 id="how-else">{guideWords.else}</h2>
      <Opening title={guideWords.forPeople} begin={book.set !== null}>
        <ForPeople book={book} />
      </Opening>
      <Opening title={schemeWords.title} begin={false}>
        <OwnScheme book={book} />
      </Opening>
    </section>
  );
}

function Opening({
  title,
  begin,
  children,
}: {
  title: string;
  begin: boolean;
  children: ComponentChildren;
}): VNode {
  const [open, setOpen] = useState(begin);
  return (
    <details class="opening" open={open} onToggle={(event) => setOpen(event.currentTarget.open)}>
      <summary>{title}</summary>
      {open && <div class="opened">{children}</div>}
    </details>
  );
}
