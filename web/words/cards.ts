import { count } from './grammar.ts';

/** Choosing cards. */
export const cardsWords = {
  heading: 'Which cards shall we make?',
  lead: 'Touch a layout to add one; its pencil makes a copy that is yours to change.',
  size: 'Size of the finished card',
  papersOf: 'Papers on one card',
  allPapers: 'any',
  a6: 'A6',
  chosenOf: (cards: number): string => `(${cards})`,
  papers: (papers: number): string => count(papers, 'paper'),
  more: (name: string): string => `One more: ${name}`,
  fewer: (name: string): string => `One fewer: ${name}`,
  howMany: (name: string): string => `How many: ${name}`,
  batch: 'Your batch',
  chosen: (cards: number): string => (cards === 0 ? 'No cards yet' : count(cards, 'card')),
  sheets: (sheets: number, has: number): string =>
    sheets > has
      ? `These cards need at least ${count(sheets, 'sheet')}; your pad has ${has}.`
      : `about ${count(sheets, 'sheet')} or more of ${has}`,
  plan: 'Choose the papers for me',
  planning: 'Laying papers together …',
  kept: 'kept',
  own: 'Draw a card of my own',
  makeMine: (name: string): string => `Make it mine: ${name}`,
  changeOwn: (name: string): string => `Change ${name}`,
};
