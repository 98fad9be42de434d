import { useState } from 'preact/hooks';
import type { VNode } from 'preact';
import type { LayoutListing, NewLayout } from '../../server/contract/layouts.ts';
import { Icon } from '../table/icon.tsx';
import { cardsWords } from '../words/cards.ts';
import { editorWords } from '../words/editor.ts';

/** The editor is fetched when it is first wanted. */
type Editor = typeof import('./layout-editor.tsx').LayoutEditor;

interface Props {
  readonly from: LayoutListing;
  readonly pad: string;
  /** Only its card is taken, without its layers. */
  readonly empty?: boolean;
}

/** Opens the editor on an empty card, on a copy of one of ours, or on one of hers. */
export function OpenEditor({ from, pad, empty }: Props): VNode {
  const [open, setOpen] = useState<{ editor: Editor; start: NewLayout } | null>(null);
  const hers = !empty && from.origin === 'hers';

  async function begin(): Promise<void> {
    const [{ LayoutEditor }, { blank }] = await Promise.all([
      import('./layout-editor.tsx'),
      import('./order-layers.ts'),
    ]);
    const { card, fold, layers, elements } = from;
    const name = hers ? from.name : editorWords.copyOf(from.name);
    const start = empty
      ? blank(from, editorWords.blank)
      : { name, card, fold, layers, ...(elements && { elements }) };
    setOpen({ editor: LayoutEditor, start });
  }

  return (
    <>
      {empty ? (
        <button type="button" class="button quiet" onClick={() => void begin()}>
          <Icon name="plus" /> {cardsWords.own}
        </button>
      ) : (
        <button
          type="button"
          class="round plain"
          aria-label={(hers ? cardsWords.changeOwn : cardsWords.makeMine)(from.name)}
          onClick={() => void begin()}
        >
          <Icon name="pencil" />
        </button>
      )}
      {open && (
        <open.editor
          start={open.start}
          hers={hers ? from.id : null}
          pad={pad}
          close={() => setOpen(null)}
        />
      )}
    </>
  );
}
