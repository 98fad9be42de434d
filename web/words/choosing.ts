import { someOf } from './grammar.ts';

/** When her shelf has changed since a plan was made. */
export const choosingWords = {
  added: (names: readonly string[]): string => `Added since this plan was made: ${someOf(names)}.`,
  gone: 'A cardstock that it is cut from is put away.',
  mend: 'You have added cardstock since this plan was made: choose cardstock and inks again first.',
  again: 'Choose cardstock and inks again',
  chosen: (names: readonly string[]): string =>
    `${someOf(names)} came, so cardstock and inks were chosen again; every paper lies where it lay.`,
  back: 'Take it back',
};
