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
    heading: (ticks: number): string =>
      ticks === 0 ? 'Have you begun to cut this plan?' : 'You have begun to cut this plan',
    /** None are known where the service could not be asked. */
    said: (ticks: number): string =>
      `${ticks === 0 ? 'The ticks in its guide could not be fetched.' : `Its guide has ${count(ticks, 'tick')}.`} Unless the new plan is cut just the same, it begins a guide of its own; this one stays with its ticks under ‘Earlier plans’.`,
    goOn: 'Make the new plan',
    stay: 'Stay with this plan',
  },
};
