import type { VNode } from 'preact';
import { Mishap } from '../table/mishap.tsx';
import { words } from '../words/words.ts';
import { useAnswer } from './use-answer.ts';

interface Props<T> {
  /** Says all that the question depends on. */
  readonly about: string;
  /** Something is planned anew, which comes first. */
  readonly busy: boolean;
  readonly read: (signal: AbortSignal) => Promise<T>;
  /** Whether an answer is whole; one that is not is shown while the rest is asked for. */
  readonly whole?: (answer: T) => boolean;
  readonly children: (answer: T) => VNode;
}

/** Shows the answer to a question about the plan; until then that it is being worked out, or why it cannot be. */
export function Answered<T>({ about, busy, read, whole, children }: Props<T>): VNode {
  const { answer, problem, again } = useAnswer(about, busy, read, whole);
  if (problem) return <Mishap problem={problem} again={again} />;
  return (
    <div aria-live="polite">
      {answer === null ? <p class="at-work">{words.waiting}</p> : children(answer)}
    </div>
  );
}
