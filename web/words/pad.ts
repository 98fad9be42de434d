import type { PaletteColour, Pattern } from '../../server/contract/pads.ts';
import { count, sentence } from './grammar.ts';

/** The papers of a pad. */
export const padWords = {
  story: 'Colours of this pad',
  carriedBy: (sides: number): string => `on ${count(sides, 'side')}`,
  sets: 'One print, several colours',
  families: 'Families: papers led by one colour',
  family: (name: string): string => sentence(name),
  familySides: (sides: number): string => count(sides, 'side'),
  sheets: (sheets: number): string => `All ${count(sheets, 'sheet')}`,
  numbers:
    'The plan and the guide call your papers by these names, and nothing on the papers tells them: stick a note with its name on each sheet before you cut.',
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
      none: 'fits any way up',
      'two-way': 'fits upside down as well',
      'one-way': 'has an up',
    }[pattern.direction];
    const busy = pattern.busyness > 0.6 ? 'busy' : pattern.busyness > 0.3 ? 'lively' : 'calm';
    const again = repeat === null ? '' : `, repeats every ${repeat}`;
    return `${sentence(busy)}, ${direction}${again}.`;
  },
  label: 'Its name',
  rename: (label: string): string => `${label}: change its name or count`,
  renameLead: 'Plans that you make from now on, and their guides, call it by this name.',
  up: {
    question: 'Which of these stands upright?',
    turns: {
      0: 'Upright as it lies',
      90: 'Upright a quarter turn to the right',
      180: 'Upright upside down',
      270: 'Upright a quarter turn to the left',
    },
    none: 'any way up',
    saved: 'Kept. New plans go by it.',
  },
  copyCount: 'How many of it',
  factsSaved: 'Saved.',
  goesWith: 'What goes with this?',
  goesWithHow:
    'Best first. Shares here are of whole sides; on a card only what is seen of a piece counts.',
  onward: 'Choose cards',
  emptyTitle: 'No papers yet',
  empty: 'Photograph the sheets of this pad and they will lie here.',
  toPhotos: 'Photograph the papers',
};
