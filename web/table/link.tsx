import type { ComponentChildren, VNode } from 'preact';
import { address, go, type Place } from './way.ts';

interface Props {
  readonly to: Place;
  readonly class?: string;
  readonly current?: boolean;
  readonly label?: string;
  readonly children: ComponentChildren;
}

/** A real link that moves within the page when it is simply clicked. */
export function Link({ to, class: look, current, label, children }: Props): VNode {
  return (
    <a
      href={address(to)}
      class={look}
      aria-current={current ? 'page' : undefined}
      aria-label={label}
      onClick={(event) => {
        if (event.ctrlKey || event.metaKey || event.shiftKey || event.button !== 0) return;
        event.preventDefault();
        go(to);
      }}
    >
      {children}
    </a>
  );
}
