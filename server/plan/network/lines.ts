import type { Relaxation } from './relaxation.ts';

/** How the designs of one slot run through a table while its other slots stand. */
export interface Line {
  readonly data: Float64Array;
  /** By how much each place of the first and of the second fixed slot moves the beginning. */
  readonly first: number;
  readonly second: number;
  readonly step: number;
}

/** At [fixed * slots + running]. */
export function pairLines({ pairs, designs }: Relaxation): (Line | undefined)[] {
  const count = designs.length;
  const lines = new Array<Line | undefined>(count ** 2).fill(undefined);
  for (const { a, b, data } of pairs) {
    const width = designs[b]!.length;
    lines[a * count + b] = { data, first: width, second: 0, step: 1 };
    lines[b * count + a] = { data, first: 1, second: 0, step: width };
  }
  return lines;
}

/** At [(fixed * slots + other fixed) * slots + running]. */
export function tripleLines({ triples, designs }: Relaxation): (Line | undefined)[] {
  const count = designs.length;
  const lines = new Array<Line | undefined>(count ** 3).fill(undefined);
  for (const { a, b, c, data } of triples) {
    const width = designs[c]!.length;
    const steps = [designs[b]!.length * width, width, 1] as const;
    const members = [a, b, c] as const;
    for (const [one, other, last] of TURNS)
      lines[(members[one] * count + members[other]) * count + members[last]] = {
        data,
        first: steps[one],
        second: steps[other],
        step: steps[last],
      };
  }
  return lines;
}

const TURNS = [
  [0, 1, 2],
  [1, 0, 2],
  [0, 2, 1],
  [2, 0, 1],
  [1, 2, 0],
  [2, 1, 0],
] as const;
