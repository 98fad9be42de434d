import type { Problem } from '../contract/values.ts';
import { KINDS } from './problem-kinds.ts';
import type { ProblemKind } from './problem-kinds.ts';

/** Problem details of one kind. */
export function problem(
  kind: ProblemKind,
  says: Pick<Problem, 'detail'> & Partial<Problem>,
): Problem {
  const { title, status } = KINDS[kind];
  return { type: `/problems/${kind}`, title, status, ...says };
}

/** A fault of the wire itself that already has its problem. */
export class Spoken extends Error {
  override readonly name = 'Spoken';
  readonly problem: Problem;

  constructor(says: Problem) {
    super(says.detail);
    this.problem = says;
  }
}
