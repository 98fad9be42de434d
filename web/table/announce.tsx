import { signal } from '@preact/signals';
import type { VNode } from 'preact';

const said = signal('');

/** Says a sentence to those who listen rather than look. */
export function announce(sentence: string): void {
  said.value = sentence;
}

export function Announcer(): VNode {
  return (
    <p class="unseen" role="status" aria-live="polite">
      {said.value}
    </p>
  );
}
