import { letter, listed } from './grammar.ts';

/** Drawing a card of her own. */
export const editorWords = {
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
  kinds: {
    panel: 'Panel',
    strip: 'Strip',
    circle: 'Circle',
    banner: 'Banner',
    greeting: 'Greeting',
  },
  elements: 'Stamped or cut with a die',
  elementKinds: { stamp: 'Stamp', 'die-cut': 'Die cut' },
  element: (kind: 'stamp' | 'die-cut', name: string): string => {
    const said = kind === 'stamp' ? 'Stamp' : 'Die cut';
    return name.startsWith(said) ? name : `${said}: ${name}`;
  },
  onLayer: 'On which layer',
  noRoom: (element: string, layer: string): string =>
    `${element} lies on ${layer}, but it does not fit there: part of it would lie beside what is seen of ${layer}.`,
  squeezed: (elements: readonly string[], greeting: string, covered: boolean): string =>
    `${listed(elements)} ${covered ? `lie${elements.length === 1 ? 's' : ''} on the words of ${greeting}` : `leave${elements.length === 1 ? 's' : ''} the words of ${greeting} little room, so they are drawn smaller`}. Pull ${elements.length === 1 ? 'it' : 'one'} aside, or give ${greeting} more room.`,
  measures: { width: 'Width', height: 'Height', x: 'From the left', y: 'From the top' },
  unreadable: 'Write it as 4 1/4 or 108 mm, at least 1/8 in (3 mm) wide.',
  layerName: 'What you call it',
  role: 'What it does',
  roles: {
    mat: 'mat',
    panel: 'panel',
    strip: 'strip',
    focal: 'centre piece',
    greeting: 'greeting',
  },
  paper: 'Its paper',
  /** The letter is that on the drawing; plain cardstock has none and is told by what else is cut from it. */
  paperOf: (material: 'patterned' | 'cardstock', index: number, sharers: string): string => {
    const stuff = material === 'patterned' ? `Patterned paper ${letter(index)}` : 'Plain cardstock';
    return sharers === '' ? `${stuff}, for it alone` : `${stuff}, the same as ${sharers}`;
  },
  another: {
    patterned: 'Another patterned paper, for it alone',
    cardstock: 'Another plain cardstock, for it alone',
  },
  up: 'Up',
  down: 'Down',
  remove: 'Take away',
  highest: 'It lies on top of all others.',
  lowest: 'It lies lowest; below it is only the card itself.',
  onlyOne: 'It is the only layer on the card, so that it can go neither up nor down.',
  mostLayers: (most: number): string => `A card takes ${most} layers at most: take one away first.`,
  mostElements: (most: number): string =>
    `A card takes ${most} of them at most: take one away first.`,
  layerFirst: 'Add a layer first: they are stamped or glued on one.',
  faultFirst: 'It can be kept once what is told in red is mended.',
  nameFirst: 'It can be kept once it has a name.',
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
};
