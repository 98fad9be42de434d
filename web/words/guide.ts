/** Cutting and building. */
export const guideWords = {
  heading: 'Cut and build',
  print: (paper: string): string => `Print the guide (${paper})`,
  printElse: (paper: string): string => `or on ${paper}`,
  done: (done: number, all: number): string => `${done} of ${all} steps done`,
  progress: 'Steps done',
  all: 'All steps',
  chapters: {
    number: 'First',
    before: 'Before you cut',
    paper: 'Cut the papers',
    cardstock: 'Cut the cardstock',
    card: 'Build the cards',
    left: 'Last',
  },
  blade: 'Fingers behind the guard; blade covered when you put it down.',
  numberSheets: 'Number your sheets',
  numberHow: [
    'Nothing on your papers tells their number. Find each of these sheets by its two sides and stick a note with its number or name on it.',
    'Do not write on the paper itself: either side may show.',
  ],
  face: { front: 'front', back: 'back' },
  beforeCut: 'Before the first cut',
  takes: 'What it takes',
  laid: 'The sheet with its numbered cuts',
  laidStock: 'The sheet of cardstock with its numbered cuts',
  step: (number: number, count: number): string => `Step ${number} of ${count}`,
  act: {
    number: (number: number, count: number): string => `${number} of ${count}`,
    before: (number: number, count: number): string => `${number} of ${count}`,
    paper: (number: number, count: number): string => `Cut ${number} of ${count}`,
    cardstock: (number: number, count: number): string => `Cut ${number} of ${count}`,
    card: (number: number, count: number): string => `${number} of ${count}`,
    left: (number: number, count: number): string => `${number} of ${count}`,
  },
  /** What of a card is at hand: '3 of 7: stamp'. */
  parts: { layer: 'layer', stamp: 'stamp', 'die-cut': 'die cut' },
  ofCard: (place: string, part: string): string => `${place}: ${part}`,
  cutStock: (name: string, numbers: readonly number[]): string => {
    if (numbers.length === 0) return name;
    return `${name}, ${numbers.length === 1 ? 'sheet' : 'sheets'} ${numbers.join(' and ')}`;
  },
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
  partsUsed: 'The parts that you cut pieces from leave your left-overs with this step.',
  alike: (first: string): string => `cut alike with ${first}: stack them`,
  inStacks: 'Cut alike with sheets before it: they lie in one stack.',
  stacks: (stacks: number): string =>
    stacks === 1
      ? 'One stack by these cuts'
      : `${stacks} stacks by these cuts, one after the other`,
  stack: (of: readonly { readonly label: string; readonly sheets: number }[]): string =>
    of.map(({ label, sheets }) => `${sheets} of ${label}`).join(', '),
  before: 'Step before',
  after: 'Step after',
  tick: 'Done',
  tickAct: (number: number, main: string): string => `Tick ${number}: ${main}`,
  untick: 'Take the tick away',
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
};
