import type { Pad, Photo } from '../../server/contract/pads.ts';
import { holdsPlace, type Sending } from './sending.ts';
import { shownFace } from './shown-face.ts';

export type Face = 'front' | 'back';

/** What lay on the table together: a photo of the fronts, then one of the same sheets turned over in place. */
export interface Tableful {
  readonly arrangement: string;
  readonly front: Photo | null;
  readonly back: Photo | null;
}

/**
 * The tablefuls of a pad, with those whose photos are still on their way, each arrangement once: in the order in which
 * they came in, those that were numbered here by their numbers, for a photo of one of them may come late.
 */
export function tablefulsOf(pad: Pad, underway: readonly string[]): Tableful[] {
  const words = [...new Set([...pad.photos.map((photo) => photo.arrangement), ...underway])];
  const numbered = words.filter(isNumbered).sort((a, b) => numberOf(a) - numberOf(b));
  const ordered = words.map((word) => (isNumbered(word) ? numbered.shift()! : word));
  return ordered.map((arrangement) => ({
    arrangement,
    front: lastOf(pad, arrangement, 'front'),
    back: lastOf(pad, arrangement, 'back'),
  }));
}

function isNumbered(arrangement: string): boolean {
  return /^table-\d+$/.test(arrangement);
}

function numberOf(arrangement: string): number {
  return Number(arrangement.slice('table-'.length));
}

function lastOf(pad: Pad, arrangement: string, face: Face): Photo | null {
  return (
    pad.photos.findLast((one) => one.arrangement === arrangement && shownFace(pad, one) === face) ??
    null
  );
}

/** Where a photo goes: which tableful, which face. */
export interface Berth {
  readonly arrangement: string;
  readonly side: Face;
}

/** How she took several photos. */
export const orders = ['in-turn', 'fronts', 'backs'] as const;
export type Order = (typeof orders)[number];

/**
 * Berths for photos in their turn: fronts open new tablefuls, backs go to the first tableful that lacks one.
 * What she says of all of them goes before what their names say; a name goes before the turn.
 */
export function berthsFor(
  photos: readonly { readonly face: Face | null; readonly stem: string }[],
  order: Order,
  pad: Pad,
  sendings: readonly Sending[],
): Berth[] {
  const taken = new Set(
    [
      ...pad.photos.map((one) => ({ arrangement: one.arrangement, side: shownFace(pad, one) })),
      ...sendings.filter(holdsPlace).map(({ berth }) => berth),
    ].map(keyOf),
  );
  const said = order === 'in-turn' ? null : order === 'fronts' ? 'front' : 'back';
  const tables = new Map<string, string>();
  const berths: Berth[] = [];
  let turn: Face = lacksBack(taken) ? 'back' : 'front';
  for (const { face, stem } of photos) {
    const side = said ?? face ?? turn;
    const table = face === null || said !== null ? undefined : tables.get(stem);
    const beside = table === undefined ? null : { arrangement: table, side };
    const berth = beside !== null && !taken.has(keyOf(beside)) ? beside : firstFree(taken, side);
    taken.add(keyOf(berth));
    if (face !== null) tables.set(stem, berth.arrangement);
    berths.push(berth);
    turn = side === 'front' ? 'back' : 'front';
  }
  return berths;
}

function lacksBack(taken: ReadonlySet<string>): boolean {
  return [...taken].some((key) => {
    const [arrangement, side] = key.split('/');
    return side === 'front' && !taken.has(`${arrangement!}/back`);
  });
}

function firstFree(taken: ReadonlySet<string>, side: Face): Berth {
  for (let n = 1; ; n += 1) {
    const berth = { arrangement: `table-${n}`, side };
    const frontLies = taken.has(keyOf({ ...berth, side: 'front' }));
    const lacking = side === 'front' || frontLies || noFrontLacksBack(taken);
    if (!taken.has(keyOf(berth)) && lacking) return berth;
  }
}

function noFrontLacksBack(taken: ReadonlySet<string>): boolean {
  return !lacksBack(taken);
}

function keyOf({ arrangement, side }: Berth): string {
  return `${arrangement}/${side}`;
}
