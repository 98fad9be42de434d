import type { VNode } from 'preact';
import { photosWords } from '../words/photos.ts';

/** How to lay and photograph the papers, drawn first and said second. */
export function HowToLay({ open }: { open: boolean }): VNode {
  return (
    <details class="how-to-lay" open={open}>
      <summary>{photosWords.how}</summary>
      <ol>
        {photosWords.steps.map((step, index) => (
          <li key={step}>
            {index === 1 ? <Turning /> : <Laid white={index === 0} />}
            <span>{step}</span>
          </li>
        ))}
      </ol>
    </details>
  );
}

const places = [10, 42, 74];

function Laid({ white }: { white: boolean }): VNode {
  return (
    <svg viewBox="0 0 120 80" aria-hidden="true" class="lay">
      {places.map((x, n) => (
        <g key={x}>
          <rect class={`lay-${n}`} x={x} y="8" width="26" height="26" />
          <rect class={`lay-${(n + 1) % 3}`} x={x} y="44" width="26" height="26" />
        </g>
      ))}
      {white && <rect class="lay-white" x="104" y="30" width="12" height="18" />}
    </svg>
  );
}

/** One sheet turned over sideways: the front lies, the sheet stands on its edge, the back lies in its place. */
function Turning(): VNode {
  return (
    <svg viewBox="0 0 120 80" aria-hidden="true" class="lay">
      <rect class="lay-0" x="6" y="26" width="34" height="34" />
      <path class="lay-print" d="M12 53 23 33 34 53Z" />
      <path class="lay-1 lay-standing" d="M60 26 72 16V70L60 60Z" />
      <path class="lay-0" d="M60 26 58.5 24.8V61.2L60 60Z" />
      <rect class="lay-back" x="80" y="26" width="34" height="34" />
      <circle class="lay-print" cx="97" cy="43" r="9" />
      <path class="lay-arrow" d="M24 20C38 6 80 6 95 19" />
      <path class="lay-arrow" d="M95 19 93 11M95 19 87 18" />
    </svg>
  );
}
