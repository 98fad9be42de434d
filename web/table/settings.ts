import { computed, effect } from '@preact/signals';
import { remembered } from './memory.ts';

export const looks = ['auto', 'light', 'dark'] as const;
export const rulers = ['in', 'mm'] as const;
export const printPapers = ['letter', 'a4'] as const;
/** Her cardstock comes as the paper of her printer does, unless she says otherwise. */
export const stockChoices = ['as-printed', 'letter', 'a4'] as const;
export type Look = (typeof looks)[number];
export type Ruler = (typeof rulers)[number];
export type StockChoice = (typeof stockChoices)[number];
export type PrintPaper = (typeof printPapers)[number];

const american = navigator.language.toLowerCase().endsWith('-us') || navigator.language === 'en';

export const look = remembered<Look>('look', 'auto', oneOf(looks));
export const ruler = remembered<Ruler>('ruler', american ? 'in' : 'mm', oneOf(rulers));
export const printPaper = remembered<PrintPaper>(
  'print-paper',
  american ? 'letter' : 'a4',
  oneOf(printPapers),
);

export const stockChosen = remembered<StockChoice>('stock', 'as-printed', oneOf(stockChoices));
export const stockPaper = computed<PrintPaper>(() =>
  stockChosen.value === 'as-printed' ? printPaper.value : stockChosen.value,
);

effect(() => {
  document.documentElement.dataset.look = look.value;
});

function oneOf<T extends string>(choices: readonly T[]): (value: unknown) => value is T {
  return (value): value is T => choices.includes(value as T);
}
