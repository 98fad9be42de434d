/** Cardstock and ink. */
export const suppliesWords = {
  heading: 'Cardstock and ink',
  add: 'Add cardstock or ink',
  none: 'Nothing here yet. Lay squares of your cardstock and ink smears on white card and photograph them together, or type a colour.',
  cardstock: 'Cardstock',
  inks: 'Inks',
  takeAway: (name: string): string => `Take away ${name}`,
  takeAwaySure: 'Yes, take it away',
  keep: 'Keep it',
  kind: 'What is it?',
  kinds: { cardstock: 'cardstock', ink: 'ink' },
  way: 'Where is the colour?',
  ways: { photo: 'on a new photo', touch: 'on a photo that is here', typed: 'I type it' },
  photoHow:
    'Lay squares of cardstock, or smears of ink, on white card, a finger’s width apart: the white card that lay beside your papers compares best. Turn them until nothing shines; an even sheen on a pale one cannot be told from its colour. All of them are found at once.',
  photo: 'The photo',
  touchHow: 'Touch the middle of the square, the smear or the printed shape.',
  touchKeys: 'With the keyboard: Tab to the photo, arrow keys to walk the ring.',
  touchPhoto: 'The photo: touch the colour',
  whichPhoto: 'Which photo?',
  photoNamed: (number: number): string => `Photo ${number}`,
  colour: 'The colour',
  colourHint: 'forest green, #0f5257, lab 32 -18 -9',
  colourHow: 'A name like dark reddish orange, or figures: #0f5257, or lab 32 -18 -9.',
  colourUnread:
    'No colour of that name is known here. Choose one of the list, or write figures: #0f5257, or lab 32 -18 -9.',
  colourRoughly: 'A name tells a colour only roughly: few verdicts can be given on it.',
  colourExact: 'Taken as exact. Only a photo of the real one shows whether it is.',
  name: 'Name',
  nameFree:
    'Leave it empty, and each is called by its colour. You can change every name afterwards.',
  nameOf: (name: string): string => `Name of ${name}`,
  sheetsLeft: 'sheets left',
  sheetsLeftOf: (name: string): string => `Sheets left of ${name}`,
  ofDemo: 'from the demo pad',
  list: {
    save: 'Save as a list',
    bring: 'Bring a list (CSV)',
    putAwayDemo: 'Put away those of the demo',
    brought: (added: number, changed: number): string => `${added} added, ${changed} changed.`,
  },
  reading: 'Reading the colours …',
  lay: 'Add it',
  added: (supplies: number): string => `${supplies} added.`,
  glossy: 'glossy: its colour cannot be told from this photo',
  photos: {
    heading: 'Photos of your supplies',
    of: (number: number, supplies: number): string =>
      `Photo ${number}: ${supplies} ${supplies === 1 ? 'colour' : 'colours'}`,
    open: 'Show its colour scraps',
    tied: 'tied by scraps',
    title: 'Colour scraps beside your supplies',
    how: 'Do the scraps of a pad’s photos lie in this picture too? Touch each of them once: white, grey, black and colours. Its colours are then brought to look as they would in the pad’s first photo, so they compare better, even from another room. A square that is one of the scraps leaves your list, until you take the tie off.',
    which: 'Which pad’s scraps?',
    noPad: 'There is no pad yet whose photos could show scraps.',
    noScraps:
      'No photo of this pad says how the scraps look. Open one of its photos, touch the scraps there, then come back.',
    tie: {
      none: 'This photo is not tied to the photos of a pad yet.',
      first: 'This photo is not tied to the photos of a pad yet.',
      tied: 'This photo is tied to the photos of a pad by its scraps.',
    },
    saved: 'The scraps are kept, and the colours are read again.',
    aside: (names: readonly string[]): string =>
      `Taken for scraps, so not in your list: ${names.join(', ')}. Is one of them your cardstock or ink after all? Take the tie off, and it is in your list again.`,
    untie: 'Take the tie off',
    untied: 'The tie is off: the colours are read again as this photo shows them.',
    scraps: 'Colour scraps lie here too',
    scrapsWhy:
      'Are there squares in this picture that also lie in a pad’s photos? Show them, and these colours compare better with its papers.',
  },
  twins: {
    heading: 'Twice the same?',
    lead: 'These can hardly be told apart. If it is the same card or ink, put one away; if they are two, say so.',
    pair: (again: string, first: string): string => `${again}, beside ${first}`,
    putAway: (name: string): string => `Put away ${name}`,
    away: (name: string): string => `${name} is put away.`,
    both: 'They are two',
  },
  found: {
    title: 'Found in your photo',
    lead: (supplies: number): string =>
      supplies === 1
        ? 'One colour was found and is kept. Change its name here if you like.'
        : `${supplies} colours were found and are kept. Change their names here if you like.`,
    photo: 'Your photo, each colour with its number',
    nameOf: (number: number): string => `Name of number ${number}`,
    done: 'Done',
  },
};
