import { Refusal } from '../refusals/refusal.ts';

const MEGABYTE = 2 ** 20;
const GIGABYTE = 2 ** 30;

/** Some thirty photos and all their swatches come to about 200 MB. */
const LARGEST_ARCHIVE = 2 * GIGABYTE;
/** Of the contents, and of one plan: that of a pad of 48 sheets takes 0.7 MB. */
const LARGEST_CONTENTS = 64 * MEGABYTE;
const LARGEST_PLAN = 16 * MEGABYTE;
const MOST_PLANS = 5000;
const MOST_PICTURES = 5000;

/** Adds up what a file of a pad holds, sizes in bytes, and refuses when it comes to more than such a file may hold. */
export interface PadTally {
  contents(size: number): void;
  plan(size: number): void;
  picture(size: number): void;
}

const MENDS = {
  pad: 'Delete plans or photos that you no longer need, or copy the whole data folder instead, with the backup command.',
  file: 'Copy the whole data folder of the other computer instead, with the backup command.',
} as const;

/** The same sums for a pad that is saved and for a file that is brought, so that what was saved can be brought. */
export function tallyOf(field: keyof typeof MENDS): PadTally {
  let [bytes, plans, pictures] = [0, 0, 0];
  const atMost = (limit: number, received: number, what: string): void => {
    if (received > limit) throw tooLarge(field, received, what);
  };
  const add = (size: number): void => atMost(LARGEST_ARCHIVE, (bytes += size), 'of at most 2 GB');
  return {
    contents: (size) => {
      atMost(LARGEST_CONTENTS, size, 'of which at most 64 MB is neither plan nor picture');
      add(size);
    },
    plan: (size) => {
      atMost(MOST_PLANS, (plans += 1), `with at most ${MOST_PLANS} plans`);
      atMost(LARGEST_PLAN, size, 'of which no plan is larger than 16 MB');
      add(size);
    },
    picture: (size) => {
      atMost(
        MOST_PICTURES,
        (pictures += 1),
        `with at most ${MOST_PICTURES} pictures, those of its photos and sides together`,
      );
      add(size);
    },
  };
}

/** `what` says what of a pad a file holds, such as 'of at most 2 GB'. */
export function tooLarge(field: keyof typeof MENDS, received: unknown, what: string): Refusal {
  return new Refusal({
    kind: 'too-large',
    field,
    received,
    message: `Expected a pad ${what}, to be kept in one file`,
    mend: MENDS[field],
  });
}
