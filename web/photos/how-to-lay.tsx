import type { VNode } from 'preact';
import { words } from '../words.ts';

/** How to lay and photograph the papers, drawn first and said second. */
export function HowToLay({ open }: { open: boolean }): VNode {
  return (
    <details class="how-to-lay" open={open}>
      <summary>{words.photos.how}</summary>
      <ol>
        {words.photos.steps.map((step, index) => (
          <li key={step}>
            <Drawing turned={index === 1} white={index < 2} />
            <span>{step}</span>
          </li>
        ))}
      </ol>
    </details>
  );
}

const places = [10, 42, 74];

function Drawing({ turned, white }: { turned: boolean; white: boolean }): VNode {
  return (
    <svg viewBox="0 0 120 80" aria-hidden="true" class={turned ? 'lay turned' : 'lay'}>
      {places.map((x, n) => (
        <g key={x}>
          <rect class={`lay-sheet lay-${n}`} x={x} y="8" width="26" height="26" />
          <rect class={`lay-sheet lay-${(n + 1) % 3}`} x={x} y="44" width="26" height="26" />
        </g>
      ))}
      {white && <rect class="lay-white" x="104" y="30" width="12" height="18" />}
    </svg>
  );
}
