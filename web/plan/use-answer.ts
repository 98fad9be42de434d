import { useEffect, useState } from 'preact/hooks';
import type { Problem } from '../../server/contract/values.ts';
import { asProblem } from '../wire/ask.ts';
import { untilAnswered } from '../wire/lost.ts';

/** What came of a question: its answer, or why there is none; neither while it is on its way. */
export interface Answered<T> {
  readonly answer: T | null;
  readonly problem: Problem | null;
  readonly again: () => void;
}

/** Marks what came while more is being found out. */
const PART = 'part of ';
/** An answer that is not yet whole is shown, and asked on after so long, in milliseconds. */
const PAUSE_MS = 150;

/**
 * Asks the service as long as this part of the page is looked at. When she goes on, asks something else
 * (another `key`) or plans anew (`busy`), the question is taken back, so that nothing is worked out for nobody
 * and nothing stands in the way of what she waits for.
 */
export function useAnswer<T>(
  key: string,
  busy: boolean,
  read: (signal: AbortSignal) => Promise<T>,
  whole: (answer: T) => boolean = () => true,
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
    let pause = 0;
    const ask = (): void => {
      untilAnswered(() => read(going.signal), going.signal).then(
        (answer) => {
          if (going.signal.aborted) return;
          const end = whole(answer);
          setCame({ to: end ? asked : PART + asked, answer, problem: null });
          if (!end) pause = window.setTimeout(ask, PAUSE_MS);
        },
        (fault: unknown) => {
          if (going.signal.aborted) return;
          setCame({ to: asked, answer: null, problem: asProblem(fault) });
        },
      );
    };
    ask();
    return () => {
      clearTimeout(pause);
      going.abort();
    };
    // The key says all that the question depends on.
  }, [asked, busy]);
  const mine = came.to === asked || came.to === PART + asked;
  return {
    answer: mine ? came.answer : null,
    problem: mine ? came.problem : null,
    again: () => setTurn(turn + 1),
  };
}
