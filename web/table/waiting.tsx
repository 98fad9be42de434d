import type { ReadonlySignal } from '@preact/signals';
import type { VNode } from 'preact';
import type { Kept } from '../wire/kept.ts';
import { words } from '../words/words.ts';
import { useHeld } from './held.ts';
import { Link } from './link.tsx';
import { Mishap } from './mishap.tsx';

interface Props<T> {
  readonly of: ReadonlySignal<Kept<T>>;
  readonly again: () => void;
  /** The heading that stands for a whole screen until it is here. */
  readonly heading?: string;
  /** What it is about, where another value about the same takes its place: the one before stays until that is here. */
  readonly about?: string;
  readonly children: (value: T) => VNode;
}

/** Shows a value once it is here; until then that it is coming, or why it does not come. */
export function Once<T>({ of, again, heading, about, children }: Props<T>): VNode {
  const { value, problem, waiting } = of.value;
  const shown = useHeld(about ?? null, value);
  if (value !== null) return children(value);
  if (shown !== null && !problem) return children(shown);
  if (!problem) return <Coming heading={heading} waiting={waiting} />;
  return (
    <>
      {heading !== undefined && <h1>{heading}</h1>}
      <Mishap problem={problem} again={again} />
      {problem.status === 404 && (
        <div class="onward">
          <Link to={{ at: 'pads' }} class="button quiet">
            {words.toPads}
          </Link>
        </div>
      )}
    </>
  );
}

interface ComingProps {
  readonly heading?: string | undefined;
  readonly waiting?: boolean;
}

/** What stands for a value, or a whole screen, that is on its way. */
export function Coming({ heading, waiting = true }: ComingProps): VNode {
  return (
    <>
      {heading !== undefined && <h1>{heading}</h1>}
      <p class="waiting">{waiting ? words.waiting : ''}</p>
    </>
  );
}
