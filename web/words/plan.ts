import { cardsNamed, count, listed, sentence, someOf } from './grammar.ts';
import { words } from './words.ts';

/** The plan and each of its cards. */
export const planWords = {
  heading: (cards: number): string => `Your ${count(cards, 'card')}`,
  verdict: 'How good this plan is',
  uses: (sheets: number, fewest: number, proven: boolean): string => {
    const used = `It takes ${count(sheets, 'sheet')}.`;
    if (sheets !== fewest || !proven) return used;
    return `${used} No way of cutting needs fewer sheets.`;
  },
  weakestIs: (card: number): string => `Card ${card} is the weakest`,
  weakest: 'weakest',
  pinned: 'kept',
  card: (number: number): string => `Card ${number}`,
  replanned: 'The cards are planned again.',
  ready: 'The cards are planned; they lie under Plan.',
  changed: {
    mark: 'changed',
    too: (cards: readonly number[], bySheets: boolean): string =>
      `${sentence(cardsNamed(cards))} changed too${bySheets ? `: pieces of the same sheets lie on ${cards.length === 1 ? 'it' : 'them'}.` : ', so that all goes together.'}`,
    /** Which cards changed besides hers; and which the best plan makes otherwise, but were left as they lay. */
    said: (
      {
        cards,
        too,
        bySheets,
      }: {
        readonly cards: readonly number[];
        readonly too: readonly number[];
        readonly bySheets: boolean;
      },
      left: readonly number[],
    ): string => {
      if (left.length === 0) return planWords.changed.too(too, bySheets);
      const hers = cards.filter((card) => !too.includes(card));
      const first = hers.length > 0 ? hers : cards;
      const others = hers.length > 0 && too.length > 0 ? `, ${cardsNamed(too)} too` : '';
      const did = first.length === 0 ? 'No card' : sentence(cardsNamed(first));
      return `${did} changed${others}. Chosen all anew, ${cardsNamed(left)} would go a little better with other papers.`;
    },
    back: 'Take it back',
    anew: 'Choose all anew',
    keep: 'Leave it so',
  },
  papersSince: {
    turned: (names: readonly string[]): string =>
      `Turned since this plan was made: ${someOf(names)}.`,
    corrected: (names: readonly string[]): string =>
      `Corrected since this plan was made: ${someOf(names)}.`,
    added: (names: readonly string[]): string => `New since this plan was made: ${someOf(names)}.`,
    gone: 'A sheet that it is cut from is no longer in the pad.',
    again: 'Plan again with the papers as they are',
  },
  pull: {
    hint: 'Touch a card to look closer. To change two papers over, pull one onto the other; with a finger, rest on it for a moment first. Both are then kept where you put them; touch the card to let go of one.',
    onto: 'Pull it onto another paper',
    swap: (other: string): string => `Change over with ${other}`,
    same: 'The same paper lies there',
    kept: (sheet: string, card: number): string =>
      `Your one ${sheet} is kept for card ${card}; this piece would need a second`,
    noPaper: 'No patterned paper lies there',
    plainHere: (layer: string): string =>
      `${layer}: plain cardstock. Touch the card to choose another`,
    plainThere: (layer: string): string =>
      `${layer}: plain cardstock. Let go over a patterned paper`,
  },
  /** Of a wish that clashes with what is kept on these cards. */
  insist: (cards: readonly number[]): string =>
    `Do it, and let go of the paper kept on ${cardsNamed(cards)}`,
  steps: 'Undo and redo',
  undo: 'Undo',
  redo: 'Redo',
  taste: 'How do you like them?',
  tastes: {
    contrast: { least: 'closely matched', most: 'lively contrast' },
    busy: { least: 'calm', most: 'busy' },
    bold: { least: 'soft', most: 'bold' },
  },
  tasteOf: (least: string, most: string): string => `From ${least} to ${most}`,
  otherCards: 'Other cards',
  toGuide: 'To the cutting guide',
  cardBefore: 'Card before',
  cardAfter: 'Card after',
  layers: 'Its layers, top to bottom',
  why: 'Why they go together',
  weakSpots: 'Worth a look',
  least: 'Its least strong point',
  together: (score: number): string => `${sentence(words.goes(score))}:`,
  shares:
    'Shares are of what is seen of a piece on this card; on the pad they are of the whole side.',
  moreReasons: (reasons: number): string => count(reasons, 'more reason'),
  swap: 'swap',
  keep: (role: string): string => `Keep this for: ${role}`,
  instead: 'What else could lie here, best for this card first',
  noOtherPaper: 'This pad has no other paper.',
  forbidden: (papers: number): string => `${papers} more that what you keep forbids`,
  use: 'Use',
  allTheSame: 'all the same, and keep less',
  /** What the card gains or loses by another paper. */
  against: (score: number, now: number): string => {
    const gain = Math.round(100 * (score - now));
    if (gain === 0) return 'as good as now';
    return `${Math.abs(gain)} of 100 ${gain > 0 ? 'better' : 'less'}`;
  },
  /** The two colours that one sees most of. */
  coloursOf: (palette: readonly { readonly name: string }[]): string =>
    sentence([...new Set(palette.map(({ name }) => name))].slice(0, 2).join(', ')),
  wanted: (name: string): string => `cardstock to find: ${name}`,
  plain: 'plain cardstock',
  noCardstock: 'Add your cardstock under Supplies, and it can be chosen here.',
  value: (value: number, bound: number, cards: number, byTaste: boolean): string => {
    const by = byTaste ? 'Counted by how you like them, its' : 'Its';
    const [now, most] = [value, bound].map((sum) => Math.round((100 * sum) / cards));
    return now === most
      ? `${by} cards go together ${now} of 100 on average.`
      : `${by} cards go together ${now} of 100 on average; no choice of papers passes ${Math.ceil((100 * bound) / cards)}.`;
  },
  else: {
    heading: 'What else could it be?',
    next: 'The next best plans',
    better:
      'The first of these is better than the plan that you see: that one was not proven best, or cards were left as they lay.',
    noOther: 'There is no other plan: each of these sheets is the only one that may lie there.',
    mend: (card: number): string => `What would mend card ${card}`,
    noMend: 'No other sheet of this pad and no cardstock would make it better.',
    mendTaken: (card: number): string =>
      `Every paper that would better card ${card} lies on other cards already, or takes more from them than it gives.`,
    mendNext:
      'What is left: another paper by your own eye, which the card offers layer by layer; more sheets than it takes now, which you can try below; or a paper or cardstock that is not here yet.',
    lookAt: (card: number): string => `Look at card ${card}`,
    gone: 'If a sheet is gone',
    goneLead:
      'Touch a sheet that is used up, spoilt or kept for something else, and see what becomes of the plan.',
    amount: 'More sheets, or fewer',
    amountLead:
      'What is said of a plan on the fewest sheets holds for the cuts of its guide. Here every number of sheets is cut its own way, so more sheets can go together still better, and fewer a little less well.',
    amountMore: 'Trying more sheets …',
    sheets: (sheets: number): string => `up to ${count(sheets, 'sheet')}`,
    fewest: 'Back to as few sheets as can be cut',
    swap: (to: string, from: string, cards: readonly number[]): string =>
      `${to} instead of ${from}, for ${cards.length === 1 ? 'card' : 'cards'} ${cards.join(', ')}`,
    swaps: (swaps: number): string => `${count(swaps, 'sheet')} changed`,
    part: (part: number): string =>
      part > 0.9995 ? '100 %' : `${(Math.floor(1000 * part) / 10).toFixed(1)} %`,
    compared: (gain: number, value: number): string => {
      const part = (100 * Math.abs(gain)) / Math.max(value, 1e-9);
      if (part < 0.05) return 'As good as this plan';
      return `${part.toFixed(1)} % ${gain > 0 ? 'better' : 'less good'}`;
    },
    mends: (card: number, whole: number): string => {
      const gain = `The card gains ${Math.max(1, Math.round(100 * card))} of 100`;
      return whole < -0.005
        ? `${gain}; the other cards lose ${Math.max(1, Math.round(100 * (card - whole)))}`
        : gain;
    },
    buy: (name: string, layers: readonly string[]): string =>
      `Cardstock to buy: ${name}, for its ${listed(layers)}. A photo is not a measurement: hold it beside the papers before you buy.`,
    take: 'Have it so',
    takeOther: (number: number): string => `Have it so: plan ${number} of these`,
    takeMend: (mend: string): string => `Have it so: ${mend}`,
    nowSo: 'this plan',
    keptOn: (label: string, cards: readonly number[]): string =>
      `You keep ${label} on ${cardsNamed(cards)}.`,
    letGo: (label: string): string => `Keep it there no longer, and leave out ${label}`,
    leaveOut: (label: string): string => `Leave out ${label}`,
    leftOut: 'Left out',
    useAgain: (label: string): string => `Use ${label} again`,
  },
  noneTitle: 'No plan yet',
  none: 'Choose some cards first; the papers are laid for you.',
  toCards: 'Choose cards',
};
