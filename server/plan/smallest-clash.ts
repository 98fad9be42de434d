/**
 * The smallest set of wishes that cannot all hold.
 *
 * Takes       wishes that together cannot hold; a question whether some of them can; how often it may be asked.
 * Gives       a set of which every member is needed for the clash, in the order of the wishes; the smallest there
 *             is, unless the question would have to be asked more often.
 * Method      what is left out of a largest set that holds must be met by every clash, so a clash is at
 *             least as large as the smallest set that meets all of these; when that set clashes itself, it is the
 *             smallest, else it is grown into another largest set that holds (implicit hitting sets).
 * Source      Ignatiev, Previti, Liffiton, Marques-Silva (2015), CP 2015, LNCS 9255, 173-182,
 *             doi:10.1007/978-3-319-23219-5_13.
 * Checked     against trying all sets, on small cases of chance.
 */
export function smallestClash<T>(
  wishes: readonly T[],
  possible: (some: readonly T[]) => boolean,
  most: number,
): readonly T[] {
  let asked = 0;
  const holds = (places: readonly number[]): boolean => {
    asked++;
    return possible(places.map((at) => wishes[at]!));
  };
  const all = [...wishes.keys()];
  const needed = all.reduce<readonly number[]>((kept, at) => {
    const less = kept.filter((other) => other !== at);
    return holds(less) ? kept : less;
  }, all);
  const toMeet: (readonly number[])[] = [];
  while (asked + all.length <= most) {
    const met = fewestMeeting(toMeet, needed.length);
    if (met === null) break;
    if (!holds(met)) return met.map((at) => wishes[at]!);
    toMeet.push(leftOut(met, all, holds));
  }
  return needed.map((at) => wishes[at]!);
}

/** Adds wishes to a set that holds as long as it does; gives what could not be added. */
function leftOut(
  start: readonly number[],
  all: readonly number[],
  holds: (places: readonly number[]) => boolean,
): number[] {
  const held = [...start];
  return all.filter((at) => {
    if (held.includes(at)) return false;
    held.push(at);
    if (holds(held)) return false;
    held.pop();
    return true;
  });
}

/** The fewest places that meet every set, ascending; null when it takes `most` of them or more. */
function fewestMeeting(sets: readonly (readonly number[])[], most: number): number[] | null {
  let best: number[] | null = null;
  let size = most;
  const chosen: number[] = [];
  const visit = (): void => {
    if (chosen.length >= size) return;
    const open = sets.filter((set) => !set.some((at) => chosen.includes(at)));
    if (open.length === 0) {
      best = [...chosen].sort((a, b) => a - b);
      size = chosen.length;
      return;
    }
    const shortest = open.reduce((one, other) => (other.length < one.length ? other : one));
    for (const at of shortest) {
      chosen.push(at);
      visit();
      chosen.pop();
    }
  };
  visit();
  return best;
}
