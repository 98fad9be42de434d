import type { Pad, Photo } from '../../server/contract/pads.ts';
import { sidesOn } from './sides-on.ts';
import type { Face } from './tablefuls.ts';

/** The face that a photo shows: where most of its sides lie now, for she may have swapped them since she sent it. */
export function shownFace(pad: Pad, photo: Photo): Face {
  const sides = sidesOn(pad, photo.id);
  const fronts = sides.filter(({ face }) => face === 'front').length;
  if (2 * fronts === sides.length) return photo.side;
  return 2 * fronts > sides.length ? 'front' : 'back';
}

export function otherFace(face: Face): Face {
  return face === 'front' ? 'back' : 'front';
}
