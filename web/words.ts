import type { PaletteColour, Pattern } from '../server/contract/pads.ts';

/** Every sentence and label of the page; a translation is a second file of this shape. */
export const words = {
  name: 'Plyhue',
  home: 'Plyhue, all pads',
  skip: 'Skip to the work',
  close: 'Close',
  waiting: 'One moment …',
  titleOf: (screen: string): string => `${screen} · Plyhue`,
  percent: (share: number): string => `${Math.round(share * 100)} %`,
  goes: (score: number): string => {
    if (score >= 0.85) return 'goes beautifully';
    if (score >= 0.7) return 'goes well';
    if (score >= 0.5) return 'goes all right';
    return 'goes loosely';
  },
  letter: (index: number): string => letter(index),
  /** Layers are named in English in the layouts themselves. */
  layerName: (layer: string): string => sentence(layer.replaceAll('-', ' ')),
  stationsLabel: 'Steps of the work',
  stations: {
    photos: 'Photos',
    pad: 'Pad',
    cards: 'Cards',
    plan: 'Plan',
    guide: 'Guide',
    supplies: 'Supplies',
  },
  mishap: {
    title: 'That did not work',
    again: 'Try again',
    tryAgain: 'Try again in a moment.',
    away: 'Take this notice away',
    unknown: (status: number): string => `The service answered with ${status}.`,
    unreachable: 'The service does not answer.',
    unreachableMend: 'Check that it still runs and that this device is on the same network.',
    unreadable: 'The answer of the service could not be read.',
    drawing: 'This part of the page could not be drawn.',
    drawingMend: 'Your pads and plans are safe. Try again, or go to another step above.',
  },
  settings: {
    title: 'Your table',
    look: 'Light',
    looks: { auto: 'as the device', light: 'light', dark: 'dark' },
    ruler: 'Ruler',
    rulers: { in: 'inches', mm: 'millimetres' },
    print: 'Paper in your printer',
    prints: { letter: 'Letter', a4: 'A4' },
    kept: 'Kept on this device.',
  },
  pads: {
    title: 'Pads',
    heading: 'Your pads',
    welcome: 'Papers that belong together',
    way: [
      'Photograph the papers of a pad, front and back.',
      'See their colours, and which go together.',
      'Choose cards; the papers are laid for you.',
      'Cut from a guide, true to the ruler.',
    ],
    lead: 'A pad of patterned papers, a few photos, and you have cards whose papers suit each other, with a guide to cut them from.',
    start: 'Start a new pad',
    name: 'Name of the pad',
    nameHint: 'as it says on the cover',
    size: 'Size of its sheets',
    ownSize: 'another',
    width: 'Width',
    height: 'Height',
    create: 'Start with photos',
    bring: 'Bring a pad from a file',
    bringing: 'Bringing it in …',
    brought: (name: string): string => `${name} is here, with its photos and plans.`,
    look: (name: string): string => `About the pad ${name}`,
    rename: 'Its name',
    saveLead:
      'For another computer, or to keep: its photos, papers, plans and what is ticked off, in one file.',
    save: 'Save as one file',
    throwAway: 'Delete this pad',
    throwAwaySure: 'Yes, delete it with its photos and plans',
    removed: (name: string): string => `${name} is deleted.`,
    summary: (sheets: number, size: string): string =>
      sheets === 0 ? `no sheets yet, ${size}` : `${count(sheets, 'sheet')}, ${size}`,
  },
  photos: {
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
    cornersHow:
      'Choose a sheet below the photo, then drag its corners. With the keyboard: Tab to a corner, arrow keys to walk it, Shift for small steps.',
    cornersSaved: 'The corners are saved and the colours are read again.',
    cornersSaving: 'Reading this sheet again …',
    cornerNames: ['top left', 'top right', 'bottom right', 'bottom left'],
    corner: (index: number): string =>
      `Corner ${['top left', 'top right', 'bottom right', 'bottom left'][index]!}`,
    whiteCard: 'White card',
    whiteTap: 'The photo: touch it where the white card lies',
    whiteHow:
      'Touch the photo where a plain white card lies, then drag the corners until they lie within the card. It tells what white is in this light. One white is not enough to tell every colour: phones bend the tones and make colours livelier to please. The same scraps of paper in every picture tie the pictures together.',
    scraps: 'Colour scraps',
    scrapsTap: 'The photo: touch each colour scrap',
    scrapsHow:
      'Touch each of the scraps that lie in every picture: the white, a grey, the black and the colours. Then read the photo by them. The first photo with scraps says how they look; later ones are brought to look the same. With the keyboard: Tab to the photo, arrow keys to walk the cross, Enter to touch.',
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
  },
  phone: {
    title: 'Use my phone',
    how: 'Point the camera of your phone at this picture. It opens this pad there, for adding photos and looking; the photos lie here by themselves.',
    picture: 'Picture of the address for the camera of the phone',
    address: 'Or type this address on the phone:',
    other: 'If it does not open, the phone may be on another of your networks; try:',
    until: (time: string): string => `Good for one phone, until ${time}.`,
    again: 'Another code',
    wifi: 'The phone must be on the same home network.',
    noNetwork: 'This computer has no address on a network: connect it to the one of your phone.',
    keys: 'Devices that may come in',
    keyFor: (name: string, whole: boolean): string =>
      whole ? `${name}: everything of yours` : `${name}: one pad, for photos`,
    takeAway: (name: string): string => `Do not let in any more: ${name}`,
    name: 'Phone',
    opening: 'Letting this device in …',
  },
  pad: {
    story: 'Colours of this pad',
    carriedBy: (sides: number): string => `on ${count(sides, 'side')}`,
    sets: 'One print, several colours',
    sheets: (sheets: number): string => `All ${count(sheets, 'sheet')}`,
    sheetName: (label: string): string => label,
    sideName: (label: string, face: 'front' | 'back'): string => `${label}, ${face}`,
    openSide: (label: string, face: 'front' | 'back'): string =>
      `${label}, ${face}: look closer and see what goes with it`,
    copies: (copies: number): string => `${copies} of it`,
    bridge: 'ties colours together',
    missing: { front: 'no front yet', back: 'no back yet' },
    palette: (palette: readonly PaletteColour[]): string =>
      palette.map(({ name, share }) => `${name} ${Math.round(share * 100)} %`).join(', '),
    ground: '(ground)',
    traits: (pattern: Pattern, repeat: string | null): string => {
      const direction = {
        none: 'no up or down',
        'two-way': 'runs in two directions',
        'one-way': 'has an up',
      }[pattern.direction];
      const busy = pattern.busyness > 0.6 ? 'busy' : pattern.busyness > 0.3 ? 'lively' : 'calm';
      const again = repeat === null ? '' : `, repeats every ${repeat}`;
      return `${sentence(busy)}, ${direction}${again}.`;
    },
    label: 'Its name',
    copyCount: 'How many of it',
    factsSaved: 'Saved.',
    goesWith: 'What goes with this?',
    onward: 'Choose cards',
    emptyTitle: 'No papers yet',
    empty: 'Photograph the sheets of this pad and they will lie here.',
    toPhotos: 'Photograph the papers',
  },
  cards: {
    heading: 'Which cards shall we make?',
    lead: 'Touch a layout to add one.',
    size: 'Size of the finished card',
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
        : `takes at least ${count(sheets, 'sheet')} of ${has}`,
    plan: 'Choose the papers for me',
    planning: 'Laying papers together …',
    own: 'Draw a card of my own',
    ownLead: 'Begin with an empty card of this size, or make a layout below yours.',
    mine: 'Make it mine',
    makeMine: (name: string): string => `Make it mine: ${name}`,
    change: 'Change',
    changeOwn: (name: string): string => `Change ${name}`,
  },
  editor: {
    title: 'A card of your own',
    titleHers: 'Your card',
    blank: 'My card',
    copyOf: (name: string): string => `My ${name}`.slice(0, 80),
    name: 'Its name',
    layers: 'Layers, top to bottom',
    keys: 'Pull a layer with a finger or the mouse, its red corner makes it larger or smaller. With the keyboard, the arrow keys move the layer that has the focus, Shift and arrows size it, Delete takes it away.',
    faulty: 'cannot stay so',
    base: 'The card itself: everything lies on it.',
    add: 'Add a layer',
    kinds: { rectangle: 'Panel', strip: 'Strip', circle: 'Circle', banner: 'Banner' },
    measures: { width: 'Width', height: 'Height', x: 'From the left', y: 'From the top' },
    unreadable: 'Write it as 4 1/4 or 108 mm, at least 1/8 in (3 mm) wide.',
    role: 'What it does',
    roles: {
      mat: 'mat',
      panel: 'panel',
      strip: 'strip',
      focal: 'centre piece',
      greeting: 'greeting',
    },
    paper: 'Its paper',
    paperOf: (material: 'patterned' | 'cardstock', index: number): string =>
      material === 'patterned' ? `Pattern ${letter(index)}` : `Plain ${letter(index)}`,
    another: { patterned: 'another pattern', cardstock: 'another plain cardstock' },
    up: 'Up',
    down: 'Down',
    remove: 'Take away',
    borders: 'Where it meets other layers',
    seen: (share: number): string =>
      `You see it on ${Math.max(1, Math.round(share * 100))} % of the card.`,
    meets: (other: string, length: string): string => `Meets ${other} along ${length}.`,
    save: 'Keep it',
    saveCopy: 'Keep as a copy',
    copied: (name: string): string => `${name}, a copy`.slice(0, 80),
    kept: (name: string): string => `${name} is kept among your layouts.`,
    toFile: 'Save as a file',
    fromFile: 'Open a file',
    noLayout: (file: string): string => `${file} holds no layout. Open one that was saved here.`,
    notKept: 'Your drawing is not kept yet.',
    stay: 'Go on drawing',
    leave: 'Leave without keeping it',
    throwAway: 'Delete this layout',
    throwAwaySure: 'Yes, delete it',
    removed: 'The layout is deleted.',
  },
  plan: {
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
    pull: {
      hint: 'Touch a card to look closer. To change two papers over, pull one onto the other; with a finger, rest on it for a moment first.',
      onto: 'Pull it onto another paper',
      swap: (other: string): string => `Change over with ${other}`,
      same: 'The same paper lies there',
      noPaper: 'No patterned paper lies there',
    },
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
    moreReasons: (reasons: number): string => count(reasons, 'more reason'),
    swap: 'swap',
    keep: (role: string): string => `Keep this for: ${role}`,
    instead: 'What else could lie here, best first',
    noOtherPaper: 'This pad has no other paper.',
    forbidden: (papers: number): string => `${papers} more that what you keep forbids`,
    useAllTheSame: (name: string, score: number): string =>
      `Use ${name} ${words.goes(score)} all the same, and keep less`,
    use: (name: string, score: number): string => `Use ${name} ${words.goes(score)}`,
    wanted: (name: string): string => `cardstock to find: ${name}`,
    plain: 'plain cardstock',
    noCardstock: 'Add your cardstock under Supplies, and it can be chosen here.',
    value: (value: number, bound: number, cards: number): string => {
      const [now, most] = [value, bound].map((sum) => Math.round((100 * sum) / cards));
      return now === most
        ? `Its cards go together ${now} of 100 on average.`
        : `Its cards go together ${now} of 100 on average; no choice of papers passes ${Math.ceil((100 * bound) / cards)}.`;
    },
    else: {
      heading: 'What else could it be?',
      next: 'The next best plans',
      noOther: 'There is no other plan: each of these sheets is the only one that may lie there.',
      mend: (card: number): string => `What would mend card ${card}`,
      noMend: 'No other sheet of this pad and no cardstock would make it better.',
      gone: 'If a sheet is gone',
      goneLead: 'Touch a sheet that you would rather keep, and see what becomes of the plan.',
      amount: 'More sheets, or fewer',
      amountLead:
        'Each sheet is cut as suits the cards best. With fewer sheets the papers go together a little less well.',
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
      buy: (name: string, [l, a, b]: readonly [number, number, number]): string =>
        `Cardstock to buy: ${name} (L ${Math.round(l)}, a ${Math.round(a)}, b ${Math.round(b)}). A photo is not a measurement: hold it beside the papers before you buy.`,
      take: 'Have it so',
      takeOther: (number: number): string => `Have it so: plan ${number} of these`,
      takeMend: (mend: string): string => `Have it so: ${mend}`,
      leaveOut: (label: string): string => `Leave out ${label}`,
      leftOut: 'Left out',
      useAgain: (label: string): string => `Use ${label} again`,
    },
    noneTitle: 'No plan yet',
    none: 'Choose some cards first; the papers are laid for you.',
    toCards: 'Choose cards',
  },
  supplies: {
    heading: 'Cardstock and ink',
    add: 'Add cardstock or ink',
    none: 'Nothing here yet. Lay squares of your cardstock and ink smears on white card and photograph them together, or type a colour.',
    cardstock: 'Cardstock',
    inks: 'Inks',
    takeAway: (name: string): string => `Take away ${name}`,
    takeAwayShort: 'Take away',
    takeAwaySure: 'Yes, take it away',
    keep: 'Keep it',
    kind: 'What is it?',
    kinds: { cardstock: 'cardstock', ink: 'ink' },
    way: 'Where is the colour?',
    ways: { photo: 'on a new photo', touch: 'on a photo of this pad', typed: 'I type it' },
    photoHow:
      'Lay squares of cardstock, or smears of ink, on white card, a finger’s width apart. All of them are found at once.',
    photo: 'The photo',
    touchHow:
      'Touch the middle of the square, the smear or the printed shape. With the keyboard: Tab to the photo, arrow keys to walk the ring.',
    touchPhoto: 'The photo: touch the colour',
    whichPhoto: 'Which photo?',
    photoNamed: (number: number): string => `Photo ${number}`,
    colour: 'The colour',
    colourHint: '#0f5257, teal, or lab 32 -18 -9',
    colourUnread: 'Write it as #0f5257, as a word like teal, or as three numbers: lab 32 -18 -9.',
    name: 'Name',
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
  },
  match: {
    heading: 'Does it match?',
    lead: 'Touch a paper, then the spot on it that you hold your cardstock or ink against.',
    look: 'What do you ask of this paper?',
    looks: { match: 'Match', greeting: 'Greeting', best: 'Best of yours' },
    tapSpot: 'Touch a spot on the paper, or a colour below.',
    nothingNear: (colour: string | null): string =>
      colour === null
        ? 'Nothing to lay beside it yet.'
        : `Nothing of yours lies nearest to its ${colour}.`,
    pad: 'Pad',
    papers: 'Papers',
    against: (side: string): string => `Beside ${side}`,
    beside: (colour: string): string => `beside the paper’s ${colour}`,
    paletteRow: 'The colours of this paper, and what lies nearest to each',
    thePaper: 'the paper',
    bigPicture: (supply: string): string => `${supply} beside the paper`,
    better:
      'For a surer answer: lay it on or beside the paper, add a plain white card, and take one picture of both in soft daylight; add it here from that picture.',
    forPlan: (cards: number): string => `For your ${count(cards, 'card')}`,
    best: {
      cardstock: 'Cardstock for mats and bases',
      noCardstock: 'None of your cardstock goes under these papers yet.',
      inks: 'Inks for the accents',
      noInk: 'None of your inks picks up an accent yet.',
      uses: {
        'picks up': 'picks up a colour',
        quiet: 'a quiet neutral',
        odd: 'not in these papers',
      },
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
      unsaid: 'you have not said how many are left',
    },
    shopping: {
      heading: 'Still to find',
      nothing: 'Nothing is missing.',
      thing: (colour: string, kind: 'cardstock' | 'ink'): string => `${sentence(colour)} ${kind}`,
      details: (
        lab: readonly number[],
        cards: readonly number[],
        squareCentimetres: number | null,
        sheets: string | null,
      ): string =>
        [
          ...(sheets === null ? [] : [`${sentence(sheets)}.`]),
          ...(cards.length === 0 ? [] : [`For ${cardsNamed(cards)}.`]),
          ...(squareCentimetres === null ? [] : [`About ${squareCentimetres} square cm in all.`]),
          `Lab ${lab.map(Math.round).join(', ')}.`,
        ].join(' '),
    },
    greeting: {
      none: 'Add an ink first: then a greeting is shown in it on this paper and on your cardstock.',
      strips: 'What it is stamped on',
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
    figures: 'In figures',
    difference: (difference: number, uncertainty: number): string =>
      `Difference ${difference.toFixed(1)}, give or take ${uncertainty.toFixed(1)} (CIEDE2000).`,
  },
  guide: {
    heading: 'Cut and build',
    print: (paper: string): string => `Print the guide (${paper})`,
    printElse: (paper: string): string => `or on ${paper}`,
    done: (done: number, all: number): string => `${done} of ${all} steps done`,
    progress: 'Steps done',
    all: 'All steps',
    chapters: {
      before: 'First',
      paper: 'Cut the papers',
      cardstock: 'Cut the cardstock',
      card: 'Build the cards',
      left: 'Last',
    },
    blade: 'Fingers behind the guard; blade covered when you put it down.',
    beforeCut: 'Before the first cut',
    laid: 'The sheet with its numbered cuts',
    laidStock: 'The sheet of cardstock with its numbered cuts',
    step: (number: number, count: number): string => `Step ${number} of ${count}`,
    act: {
      before: (number: number, count: number): string => `${number} of ${count}`,
      paper: (number: number, count: number): string => `Cut ${number} of ${count}`,
      cardstock: (number: number, count: number): string => `Cut ${number} of ${count}`,
      card: (number: number, count: number): string => `Layer ${number} of ${count}`,
      left: (number: number, count: number): string => `${number} of ${count}`,
    },
    cut: (number: number, sheet: string): string => `Cut ${number}: ${sheet}`,
    cutStock: (name: string, number: number | null): string =>
      number === null ? name : `${name}, ${number}`,
    fromLeft: (title: string): string => `${title}, from left-overs`,
    spared: 'Open no new sheet: all its pieces come out of parts that you kept.',
    fromPart: (card: number, name: string, size: string): string => `Card ${card} ${name}, ${size}`,
    outOfPart: (part: string, up: boolean): string =>
      `Cut it out of your part of ${part}, laid as it lay on its sheet${up ? '' : ', the other side up'}.`,
    times: (people: number): string => `Cut this sheet ${people} times, once for each person.`,
    makeTimes: (people: number): string => `Make it ${people} times.`,
    make: (card: number, layout: string): string => `Build card ${card}: ${layout}`,
    layer: (layer: string, size: string, stuff: string): string => `${layer}, ${size}: ${stuff}`,
    stamp: 'Stamp the greeting',
    finishDrawn: 'The piece as it lies on the card: what is kept, and the two pencil marks',
    baseDrawn: 'The flat base with its score lines',
    leftTitle: 'Keep what is left',
    leftOf: (sheet: string, sizes: readonly string[]): string => `${sheet}: ${sizes.join(', ')}`,
    inStacks: 'Cut alike with sheets before it: they lie in one stack.',
    stacks: (stacks: number): string =>
      stacks === 1
        ? 'One stack by these cuts'
        : `${stacks} stacks by these cuts, one after the other`,
    stack: (of: readonly { readonly label: string; readonly sheets: number }[]): string =>
      of.map(({ label, sheets }) => `${sheets} of ${label}`).join(', '),
    before: 'Back',
    after: 'Skip',
    tick: 'Done',
    untick: 'Not done yet',
    isDone: ' (done)',
    else: 'Cut it another way',
    forPeople: 'For several people, or in higher stacks',
    people: 'People, each with all these cards',
    stacked: 'Sheets under the blade at once',
    stackedHow:
      'How many your trimmer cuts cleanly: three or four of patterned paper is common practice, one or two of cardstock. Cut one sheet first, then trust the stack.',
    fewer: (label: string): string => `One fewer: ${label}`,
    more: (label: string): string => `One more: ${label}`,
    sheetsToHave: 'Sheets to have',
    ofSheet: (label: string, needed: number): string => `${label}: ${needed}`,
    inPad: (inPad: number, needed: number): string =>
      needed > inPad
        ? `your pad has ${inPad}, ${needed - inPad} more to find`
        : `your pad has ${inPad}`,
  },
  scheme: {
    title: 'By a cutting table of your own',
    lead: 'Say which sheet gives which piece to which card. The cuts are worked out for it, and the papers are chosen anew for these sheets. Pieces of one card from the same paper move together.',
    card: 'Card',
    piece: 'Piece',
    from: 'Cut from',
    slot: (number: number, sheet: string | null): string => `Cut ${number}: ${sheet ?? 'new'}`,
    another: 'another sheet',
    sheetOf: (card: number, piece: string): string => `Card ${card} ${piece}: cut from`,
    howFull: 'How full each sheet is',
    full: (part: number): string =>
      part === 0
        ? 'empty, left out'
        : `${Math.round(100 * part)} % full${part > 1 ? ': too much' : ''}`,
    have: 'Work out these cuts',
    working: 'Working out the cuts …',
    ours: 'Back to the fewest sheets',
  },
  left: {
    title: 'Left-over parts',
    none: 'Parts of sheets that you keep for the next batch stand here. The guide of a batch puts its own in at its end.',
    how: 'Kept for the next batch: its guide says which pieces come out of them, and which sheets that spares.',
    part: (label: string, size: string): string => `${label}, ${size}`,
    takeAway: (part: string): string => `Used up or lost: ${part}`,
    gone: 'The part is taken out.',
    sheet: 'Of which sheet?',
    add: 'Add a part',
    added: 'The part is kept.',
    keep: 'Keep these for the next batch',
    kept: 'They are kept with the pad, for the next batch.',
  },
};

function count(number: number, noun: string): string {
  return `${number} ${noun}${number === 1 ? '' : 's'}`;
}

function cardsNamed(cards: readonly number[]): string {
  return `${cards.length === 1 ? 'card' : 'cards'} ${cards.join(', ')}`;
}

function sentence(text: string): string {
  return text.charAt(0).toUpperCase() + text.slice(1);
}

/** Papers are told apart by letters: A for the first. */
function letter(index: number): string {
  return String.fromCharCode(65 + Math.max(0, index));
}
