/** One line of the benchmark: a figure beside its bar. */
export interface Figure {
  /** What it shows, in words. */
  readonly name: string;
  readonly value: number;
  /** 'CIEDE2000', '%', 'ms', 'times', '' ... */
  readonly unit: string;
  /** The bar, or null for a figure that is only reported. */
  readonly bar: { readonly at: 'most' | 'least'; readonly value: number } | null;
  /** Anything needed to read it: how many cases, which seeds, what stands beside it. */
  readonly note?: string;
}

/** A topic of the benchmark; it may say that something was skipped, and why, as a figure with value NaN. */
export type Topic = () => Promise<readonly Figure[]>;

/** True when the figure misses its bar; a skipped figure (NaN) misses nothing. */
export function misses(figure: Figure): boolean {
  if (figure.bar === null || Number.isNaN(figure.value)) return false;
  return figure.bar.at === 'most'
    ? figure.value > figure.bar.value
    : figure.value < figure.bar.value;
}
