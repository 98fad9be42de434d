/** Parts of sheets that are left over. */
export const leftWords = {
  title: 'Left-over parts',
  none: 'Parts of sheets that you keep for the next batch stand here. The guide of a batch puts its own in at its end.',
  how: 'Kept for the next batch: its guide says which pieces come out of them, and which sheets that spares.',
  part: (label: string, size: string): string => `${label}, ${size}`,
  takeAway: (part: string): string => `Used up or lost: ${part}`,
  gone: 'The part is taken out.',
  sheet: 'Of which sheet?',
  add: 'Add a part',
  added: 'The part is kept.',
  keep: 'Keep these for the next batch',
  uncut: (names: readonly string[]): string =>
    `Not ticked as cut yet: ${names.join(', ')}. What is left of a sheet is there once it is cut.`,
  cutAndKeep: 'They are cut: keep these for the next batch',
  kept: 'They are kept with the pad, for the next batch.',
};
