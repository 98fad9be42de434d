import type { VNode } from 'preact';

/** Our own drawings, on a 24 x 24 field, in the colour of the text beside them. */
const drawings = {
  photos: 'M3 8h4l2-3h6l2 3h4v11H3zM12 10a3.5 3.5 0 1 0 0 7 3.5 3.5 0 0 0 0-7z',
  phone: 'M7 3h10v18H7zM10 6h4M11 18h2',
  pad: 'M5 7h12v13H5zM8 7V4h12v13h-3M8 11h6M8 14h6',
  cards: 'M4 5h7v14H4zM13 5l7 2-3 13-4-1M6 8h3M6 11h3',
  plan: 'M4 4h9v7H4zM11 9h9v11h-9zM6 14h3M6 17h3M14 13h3',
  guide: 'M3 16h18M6 16v-2M9 16v-3M12 16v-2M15 16v-3M18 16v-2M5 8l13-3M8 20h8',
  supplies: 'M4 13h8v7H4zM12 13l6-9 3 2-6 9zM4 13l3-3h5',
  plus: 'M12 5v14M5 12h14',
  minus: 'M5 12h14',
  close: 'M6 6l12 12M18 6 6 18',
  undo: 'M9 6 4 11l5 5M4 11h10a6 6 0 0 1 6 6v1',
  redo: 'M15 6l5 5-5 5M20 11H10a6 6 0 0 0-6 6v1',
  pin: 'M9 3h6l-1 6 4 4H6l4-4zM12 13v8',
  pencil: 'M4 20l1-5L16 4l4 4L9 19zM13.5 6.5l4 4',
  turn: 'M5 9a8 8 0 0 1 14-1M19 4v4h-4M19 15a8 8 0 0 1-14 1M5 20v-4h4',
  tick: 'M4 13l5 5L20 6',
  next: 'M5 12h14M13 6l6 6-6 6',
  back: 'M19 12H5M11 6l-6 6 6 6',
  up: 'M12 19V5M6 11l6-6 6 6',
  white: 'M5 5h14v14H5zM9 9h6v6H9z',
  corner: 'M4 20V4h16M9 9l8 8M17 12v5h-5',
  save: 'M4 15v5h16v-5M12 4v11M8 11l4 4 4-4',
  bring: 'M4 15v5h16v-5M12 15V4M8 8l4-4 4 4',
  more: 'M5 12h.01M12 12h.01M19 12h.01',
  print: 'M7 8V3h10v5M7 17H4V8h16v9h-3M7 14h10v7H7z',
  settings: 'M4 7h10M18 7h2M16 5v4M4 17h2M10 17h10M8 15v4',
  caution: 'M12 4l9 16H3zM12 10v5M12 17.5v.5',
  same: 'M5 9h14M5 15h14',
  near: 'M4 9c3-3 5 3 8 0s5 3 8 0M4 15c3-3 5 3 8 0s5 3 8 0',
  apart: 'M5 9h14M5 15h14M17 4 7 20',
  unsure: 'M8.5 9a3.5 3.5 0 1 1 5 3.2c-1.2.7-1.5 1.3-1.5 2.8M12 18.5v.5',
  bridge: 'M3 17h18M5 17c0-6 3-9 7-9s7 3 7 9M12 8v9M8.5 9.5V17M15.5 9.5V17',
} as const;

export type IconName = keyof typeof drawings;

export function Icon({ name }: { name: IconName }): VNode {
  return (
    <svg class="icon" viewBox="0 0 24 24" aria-hidden="true" focusable="false">
      <path d={drawings[name]} />
    </svg>
  );
}
