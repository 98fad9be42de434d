import type { Pad } from '../../server/contract/pads.ts';
import { sidesOf, type Faced } from '../pad/sides.ts';

/** The sides that were found on one photo. */
export function sidesOn(pad: Pad, photo: string): Faced[] {
  return sidesOf(pad).filter(({ side }) => side.photo === photo);
}
