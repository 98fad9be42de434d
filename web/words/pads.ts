import { count } from './grammar.ts';

/** The list of pads. */
export const padsWords = {
  title: 'Pads',
  heading: 'Your pads',
  welcome: 'Papers that belong together',
  wayTitle: 'How it goes',
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
  saving: 'Putting it together …',
  throwAway: 'Delete this pad',
  throwAwaySure: 'Yes, delete it with its photos and plans',
  removed: (name: string): string => `${name} is deleted.`,
  summary: (sheets: number, size: string): string =>
    sheets === 0 ? `no sheets yet, ${size}` : `${count(sheets, 'sheet')}, ${size}`,
};
