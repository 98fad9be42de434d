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
 * Asks the service as long as this part of the page is looked at. When she goes on, or asks something else
 * (another `key`), the question is taken back, so that nothing is worked out for nobody.
 */
export function useAnswer<T>(key: string, read: (signal: AbortSignal) => Promise<T>): Answered<T> {
  const [turn, setTurn] = useState(0);
  const asked = `${key} ${turn}`;
  const [came, setCame] = useState<{ to: string; answer: T | null; problem: Problem | null }>({
    to: '',
    answer: null,
    problem: null,
  });
  useEffect(() => {
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
  }, [asked]);
  const mine = came.to === asked;
  return {
    answer: mine ? came.answer : null,
    problem: mine ? came.problem : null,
    again: () => setTurn(turn + 1),
  };
}
