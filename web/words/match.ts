import type { Purchase } from '../../server/contract/supplies.ts';
import { cardsNamed, count, listed, sentence } from './grammar.ts';

/** Whether a cardstock or an ink matches. */
export const matchWords = {
  heading: 'Does it match?',
  lead: 'Touch a paper, then the spot on it that you hold your cardstock or ink against.',
  look: 'What do you ask of this paper?',
  looks: { match: 'Match', greeting: 'Greeting', best: 'Best of yours' },
  tapSpot: 'Touch a spot on the paper, one of its colours, or one of yours.',
  tapForBest: 'Touch a spot on the paper: then only what comes near that colour is shown.',
  wholePaper: 'Take the ring away',
  yoursBeside: (colour: string): string => `Yours beside its ${colour}, the nearest first`,
  nearestOfYours: ', the nearest of yours,',
  pad: 'Pad',
  papers: 'Papers',
  against: (side: string): string => `Beside ${side}`,
  beside: (colour: string): string => `beside the paper’s ${colour}`,
  paletteRow: 'The colours of this paper, and what lies nearest to each',
  thePaper: 'the paper',
  bigPicture: (supply: string): string => `${supply} beside the paper`,
  forPlan: (cards: number): string => `For your ${count(cards, 'card')}`,
  best: {
    cardstock: 'Cardstock for mats and bases',
    noCardstock: 'None of your cardstock goes under this paper yet.',
    inks: 'Inks for the accents',
    inksForSpot: 'Inks for this colour',
    noInk: 'None of your inks picks up an accent yet.',
    noneOfAll: {
      cardstock: 'You have no cardstock here yet: add it above.',
      ink: 'You have no ink here yet: add it above.',
    },
    noneForSpot: {
      cardstock: 'None of your cardstock comes near this colour.',
      ink: 'None of your inks comes near this colour.',
    },
    quiet: 'a quiet neutral',
    beside: {
      match: (colour: string): string => `matches its ${colour}`,
      close: (colour: string): string => `close to its ${colour}`,
      apart: (colour: string): string => `apart from its ${colour}`,
      'cannot tell': (colour: string): string =>
        `cannot tell whether it goes with its ${colour}: hold it there`,
    },
    alike: (names: readonly string[]): string => `Hardly to be told apart from ${listed(names)}.`,
    greetingInks: 'Inks for the greetings',
    forGreetings: (cards: readonly number[]): string =>
      `for the ${cards.length === 1 ? 'greeting' : 'greetings'} of ${cardsNamed(cards)}`,
    forAccent: (accent: string, cards: readonly number[]): string =>
      cards.length === 0 ? `for its ${accent}` : `for the ${accent} of ${cardsNamed(cards)}`,
  },
  takes: {
    heading: 'Cardstock that they are cut from',
    sheets: (count: number, size: string): string =>
      `takes ${count} ${count === 1 ? 'sheet' : 'sheets'} of ${size}`,
    tooLarge: 'a piece is larger than the usual sheets',
    toBuy: 'to buy',
    left: (count: number): string => `${count} left`,
    unsaid:
      'Where you say how many sheets are left, below at your cardstock, it is told what runs short.',
  },
  shopping: {
    heading: 'Still to find',
    nothing: 'No colour is missing.',
    thing: (colour: string, kind: 'cardstock' | 'ink'): string => `${sentence(colour)} ${kind}`,
    details: (
      { like, cards, sheets }: Pick<Purchase, 'like' | 'cards' | 'sheets'>,
      area: string | null,
    ): string =>
      [
        ...(like === null ? [] : [`Close to ${like}.`]),
        ...(sheets === null ? [] : [`${sentence(sheets)}.`]),
        ...(cards.length === 0 ? [] : [`For ${cardsNamed(cards)}.`]),
        ...(area === null ? [] : [`About ${area} in all.`]),
      ].join(' '),
    /** An area that was told in square centimetres, on the ruler of the pad. */
    area: (squareCentimetres: number, inches: boolean): string =>
      inches
        ? `${Math.ceil(squareCentimetres / 6.4516)} square inches`
        : `${squareCentimetres} square cm`,
    measured: (lab: readonly number[]): string =>
      `Lab ${lab.map(Math.round).join(', ')} (CIELAB, D65), as a shop’s instrument would read it.`,
  },
  greeting: {
    none: 'Add an ink first: then a greeting is shown in it on this paper and on your cardstock.',
    strips: 'What it is stamped on',
    thePapers: (colour: string): string => `the paper’s ${colour}`,
    large: 'Thank you',
    small: 'for every hour you gave',
    picture: (ink: string, strip: string): string => `A greeting in ${ink} on ${strip}`,
    reads: {
      'small letters': 'reads well',
      'large letters only': 'large letters only',
      'cannot be read': 'cannot be read',
    },
    picksUp: (colour: string): string => `It picks up the ${colour} of the paper.`,
    figures: (contrast: number, lightness: number, uncertainty: number): string =>
      `Contrast ${contrast.toFixed(1)} to 1 (WCAG 2.2 asks for 4.5, or 3 for large letters); ${Math.round(lightness)} steps of lightness apart. The colour of the letters is reckoned, not seen: it may be off by ${uncertainty.toFixed(0)} (CIEDE2000), more for a strong ink on a strong paper.`,
  },
  verdicts: {
    match: 'matches',
    close: 'close',
    apart: 'apart',
    'cannot tell': 'cannot tell',
  },
  why: 'Why',
  figures: 'In figures',
  difference: (difference: number, uncertainty: number): string =>
    `Difference ${difference.toFixed(1)}, give or take ${uncertainty.toFixed(1)} (CIEDE2000). In a published study half of the observers still accepted 1.8 as the same colour.`,
};
