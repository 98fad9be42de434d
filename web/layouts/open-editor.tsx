import { useState } from 'preact/hooks';
import type { VNode } from 'preact';
import type { LayoutListing, NewLayout } from '../../server/contract/layouts.ts';
import { Icon } from '../table/icon.tsx';
import { words } from '../words.ts';

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
    const { card, fold, layers } = from;
    const name = hers ? from.name : words.editor.copyOf(from.name);
    const start = empty ? blank(from, words.editor.blank) : { name, card, fold, layers };
    setOpen({ editor: LayoutEditor, start });
  }

  return (
    <>
      <button
        type="button"
        class={empty ? 'button quiet' : 'in-text'}
        aria-label={
          empty ? undefined : (hers ? words.cards.changeOwn : words.cards.makeMine)(from.name)
        }
        onClick={() => void begin()}
      >
        {empty && <Icon name="plus" />}{' '}
        {empty ? words.cards.own : hers ? words.cards.change : words.cards.mine}
      </button>
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
