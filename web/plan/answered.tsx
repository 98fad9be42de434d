import type { VNode } from 'preact';
import { Mishap } from '../table/mishap.tsx';
import { words } from '../words.ts';
import { useAnswer } from './use-answer.ts';

interface Props<T> {
  /** Says all that the question depends on. */
  readonly about: string;
  /** Something is planned anew, which comes first. */
  readonly busy: boolean;
  readonly read: (signal: AbortSignal) => Promise<T>;
  readonly children: (answer: T) => VNode;
}

/** Shows the answer to a question about the plan; until then that it is being worked out, or why it cannot be. */
export function Answered<T>({ about, busy, read, children }: Props<T>): VNode {
  const { answer, problem, again } = useAnswer(about, busy, read);
  if (problem) return <Mishap problem={problem} again={again} />;
  return (
    <div aria-live="polite">{answer === null ? <p>{words.waiting}</p> : children(answer)}</div>
  );
}
