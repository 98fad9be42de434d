import { useEffect, useState } from 'preact/hooks';
import type { Problem } from '../../server/contract/values.ts';
import { asProblem } from '../wire/ask.ts';

/** What came of a question: its answer, or why there is none; neither while it is on its way. */
export interface Answered<T> {
  readonly answer: T | null;
  readonly problem: Problem | null;
  readonly again: () => void;
}

/**
 * Asks the service as long as this part of the page is looked at. When she goes on, asks something else
 * (another `key`) or plans anew (`busy`), the question is taken back, so that nothing is worked out for nobody
 * and nothing stands in the way of what she waits for.
 */
export function useAnswer<T>(
  key: string,
  busy: boolean,
  read: (signal: AbortSignal) => Promise<T>,
): Answered<T> {
  const [turn, setTurn] = useState(0);
  const asked = `${key} ${turn}`;
  const [came, setCame] = useState<{ to: string; answer: T | null; problem: Problem | null }>({
    to: '',
    answer: null,
    problem: null,
  });
  useEffect(() => {
    if (busy || came.to === asked) return;
    const going = new AbortController();
    read(going.signal).then(
      (answer) => {
        if (!going.signal.aborted) setCame({ to: asked, answer, problem: null });
      },
      (fault: unknown) => {
        if (!going.signal.aborted) setCame({ to: asked, answer: null, problem: asProblem(fault) });
      },
    );
    return () => going.abort();
    // The key says all that the question depends on.
  }, [asked, busy]);
  const mine = came.to === asked;
  return {
    answer: mine ? came.answer : null,
    problem: mine ? came.problem : null,
    again: () => setTurn(turn + 1),
  };
}
