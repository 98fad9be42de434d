import type { ComponentChildren, VNode } from 'preact';
import { useEffect, useRef } from 'preact/hooks';
import { words } from '../words/words.ts';
import { Icon } from './icon.tsx';

interface Props {
  readonly title: string;
  readonly close: () => void;
  readonly wide?: boolean;
  readonly children: ComponentChildren;
}

/** The platform's own modal dialog: it keeps the focus, closes on Escape and gives the focus back. */
export function Dialog({ title, close, wide, children }: Props): VNode {
  const element = useRef<HTMLDialogElement>(null);
  useEffect(() => {
    const dialog = element.current;
    const before = document.activeElement;
    dialog?.showModal();
    return () => {
      dialog?.close();
      if (before instanceof HTMLElement && before.isConnected) before.focus();
    };
  }, []);
  return (
    <dialog
      ref={element}
      class={wide ? 'dialog wide' : 'dialog'}
      aria-label={title}
      onCancel={(event) => {
        event.preventDefault();
        close();
      }}
      onClick={(event) => {
        if (event.target === element.current) close();
      }}
    >
      <div class="dialog-sheet">
        <div class="dialog-head">
          <h2>{title}</h2>
          <button type="button" class="round" aria-label={words.close} onClick={close}>
            <Icon name="close" />
          </button>
        </div>
        {children}
      </div>
    </dialog>
  );
}
