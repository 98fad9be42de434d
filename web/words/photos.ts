import { count } from './grammar.ts';

/** Photographing the papers. */
export const photosWords = {
  heading: 'Photograph the papers',
  how: 'How to lay them',
  steps: [
    'Lay as many sheets as fit, a finger’s width apart, on a plain table in soft daylight. Put a plain white card beside them, and the same few scraps in every picture: a white, a grey, a black and some colours. Photograph the fronts from straight above.',
    'Turn every sheet over where it lies, sideways, like a page of a book. Photograph the backs from the same place.',
    'Lay the next sheets and go on until the pad is in.',
  ],
  intake: 'Add photos',
  camera: 'Take a photo',
  choose: 'Choose photos',
  drop: 'or drop them here, as many as you like',
  order: 'In which order were they taken?',
  orders: { 'in-turn': 'front, back, front, back', fronts: 'only fronts', backs: 'only backs' },
  sorted: {
    names: 'Sorted into fronts and backs by the words in their names.',
    taken: 'Sorted by when they were taken: front, then back.',
    chosen: 'Sorted in the order you chose them: front, then back.',
  },
  sortedAs: (order: string): string => `Laid as you said: ${order}.`,
  tableful: (number: number): string => `Table ${number}`,
  faces: { front: 'Fronts', back: 'Backs' },
  add: { front: 'Add the fronts', back: 'Add the backs' },
  missing: {
    front: 'No photo of the fronts yet.',
    back: 'Now turn every sheet over where it lies, sideways, like a page of a book.',
  },
  found: (sheets: number): string =>
    sheets === 0 ? 'No sheets found.' : `Found ${count(sheets, 'sheet')}.`,
  whites: {
    found: 'White card found.',
    tapped: 'White card as you showed it.',
    none: 'No white card found: the colours are less sure.',
  },
  openPhoto: (face: string, sheets: number): string =>
    `${face}: ${count(sheets, 'sheet')} found. Open to put corners right.`,
  states: {
    waiting: (): string => 'Waiting its turn',
    sending: (sent: number): string => `Sent ${Math.round(sent * 100)} %`,
    reading: (): string => 'Sent. Finding the sheets and reading their colours …',
    found: (_sent: number, found: number): string => `Found ${count(found, 'sheet')}`,
    refused: (): string => '',
  },
  underway: (photos: number): string =>
    photos === 1
      ? 'One photo is on its way. You can go on.'
      : `${photos} photos are on their way, one after the other. You can go on.`,
  stop: 'Take away',
  refused: 'Not taken in',
  stopOne: (name: string): string => `Take away ${name}`,
  swap: 'Swap fronts and backs',
  swapped: 'Fronts and backs are swapped.',
  otherFace: 'This is the other face',
  corners: 'Put the corners right',
  cornersHow: 'Touch a sheet on the photo, then drag its corners.',
  cornersKeys: 'With the keyboard: Tab to a corner, arrow keys to walk it, Shift for small steps.',
  cornersSaved: 'The corners are saved and the colours are read again.',
  cornersSaving: 'Reading this sheet again …',
  cornerNames: ['top left', 'top right', 'bottom right', 'bottom left'],
  corner: (index: number): string =>
    `Corner ${['top left', 'top right', 'bottom right', 'bottom left'][index]!}`,
  whiteCard: 'White card',
  whiteTap: 'The photo: touch it where the white card lies',
  whiteHow:
    'Touch the photo where a plain white card lies, then drag the corners until they lie within the card. It tells what white is in this light.',
  scraps: 'Colour scraps',
  scrapsTap: 'The photo: touch each colour scrap',
  scrapsHow:
    'Touch each of the scraps that lie in every picture: the white, a grey, the black and the colours. The first photo with scraps says how they look; later ones are brought to look the same. One white cannot do that: phones bend the tones, and make colours livelier to please.',
  scrapsKeys: 'With the keyboard: Tab to the photo, arrow keys to walk the cross, Enter to touch.',
  scrapsTied: {
    none: 'This photo is not tied to the others yet.',
    first: 'This photo says how the scraps look; the others are brought towards it.',
    tied: 'This photo is tied to the first one by its scraps.',
  },
  scrap: (number: number): string => `Scrap ${number}: touch to take this mark away`,
  scrapsTouched: (scraps: number): string =>
    scraps === 0
      ? 'No scrap touched yet.'
      : scraps < 3
        ? `${count(scraps, 'scrap')} touched. It takes three at least, two of them greys.`
        : `${count(scraps, 'scrap')} touched.`,
  scrapsRead: 'Read the photo by these scraps',
  scrapsAgain: 'Begin anew',
  scrapsSaved: {
    none: 'These scraps do not tie the photo: they could not all be told, or no two of them are greys that differ well in lightness. Touch the middle of each, away from its edge.',
    first: 'The scraps are kept; this photo says how they look.',
    tied: 'The scraps are kept, and the colours are read again.',
  },
  removePhoto: 'Take this photo away',
  photoGone: 'The photo is taken away.',
  sheetsOn: 'Sheets on this photo',
  pairs: (sheets: number): string => `Fronts and backs: ${count(sheets, 'sheet')}`,
  pairsHow: 'Paired by where they lay. If a pair is wrong, touch it and choose the right back.',
  changeBack: ': change its back',
  backOf: (label: string): string => `What is on the back of ${label}?`,
  noBack: 'It has no back',
  onward: 'See the pad',
  usePhone: 'Use my phone',
};
