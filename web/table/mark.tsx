import type { VNode } from 'preact';

/** Our mark: layered papers, the last one a small scene cut from one of them. */
export function Mark(): VNode {
  return (
    <svg class="mark-drawing" viewBox="0 0 64 64" aria-hidden="true" focusable="false">
      <path d="M13 20 45 11l8 30-32 9z" fill="#d9a441" />
      <path d="M12 23 44 18l5 31-32 5z" fill="#c8553d" />
      <path d="M14 24h33v30H14z" fill="#0f5257" />
      <path d="M18 28h25v22H18z" fill="#fffdf9" />
      <path d="M18 44c6-7 10 2 15-3s7-4 10-3v12H18z" fill="#5d6b1f" />
    </svg>
  );
}
