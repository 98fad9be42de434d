import { letter, sentence } from './grammar.ts';

/**
 * Words that every screen uses; each screen has a file of its own beside this one, so that it is sent only
 * when it is looked at. No sentence of the page stands anywhere else: a translation is a second folder of
 * this shape.
 */
export const words = {
  name: 'Plyhue',
  home: 'Plyhue, all pads',
  toPads: 'To your pads',
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
};
