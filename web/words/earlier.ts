import { count } from './grammar.ts';

/** Plans that were made before, and leaving one whose guide is begun. */
export const earlierWords = {
  open: 'Earlier plans',
  lead: 'Each keeps its guide and its ticks. Touch one to have it on the table again.',
  cards: (cards: number): string => count(cards, 'card'),
  /** Her day and hour, as her device writes them. */
  made: (at: string): string =>
    new Date(at).toLocaleString([], { dateStyle: 'medium', timeStyle: 'short' }),
  ticks: (ticks: number): string =>
    ticks === 0 ? 'nothing ticked off' : `${count(ticks, 'tick')} in its guide`,
  now: 'on the table now',
  more: (more: number): string => `Show ${more} more`,
  leave: {
    heading: 'You have begun to cut this plan',
    said: (ticks: number): string =>
      `Its guide has ${count(ticks, 'tick')}; the new plan begins a guide of its own, and this one stays with its ticks under ‘Earlier plans’.`,
    goOn: 'Make the new plan',
    stay: 'Stay with this plan',
  },
};
