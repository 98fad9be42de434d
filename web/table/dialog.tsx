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

/**
 * The platform's own modal dialog: it keeps the focus, closes on Escape and gives the focus back. `close` may
 * keep it open, to ask first.
 */
export function Dialog({ title, close, wide, children }: Props): VNode {
  const element = useRef<HTMLDialogElement>(null);
  const gone = useRef(false);
  const head = useRef<HTMLDivElement>(null);
  useEffect(() => {
    const dialog = element.current;
    const before = document.activeElement;
    dialog?.showModal();
    return () => {
      gone.current = true;
      dialog?.close();
      if (before instanceof HTMLElement && before.isConnected) before.focus();
    };
  }, []);
  // What stays in view below the head stands as far down as the head is high, whatever its title takes.
  useEffect(() => {
    const watch = new ResizeObserver(() => {
      element.current?.style.setProperty('--head', `${head.current?.offsetHeight ?? 0}px`);
    });
    if (head.current) watch.observe(head.current);
    return () => watch.disconnect();
  }, []);

  /** A second Escape in a row, with nothing touched between, is not asked of us: the browser closes by itself. */
  function closed(): void {
    if (gone.current) return;
    close();
    setTimeout(() => {
      if (!gone.current && element.current?.open === false) element.current.showModal();
    });
  }

  return (
    <dialog
      ref={element}
      class={wide ? 'dialog wide' : 'dialog'}
      aria-label={title}
      onCancel={(event) => {
        event.preventDefault();
        close();
      }}
      onClose={closed}
      onClick={(event) => {
        if (event.target === element.current) close();
      }}
    >
      <div class="dialog-sheet">
        <div class="dialog-head" ref={head}>
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
