import type { ReadonlySignal } from '@preact/signals';
import type { VNode } from 'preact';
import type { Kept } from '../wire/kept.ts';
import { words } from '../words/words.ts';
import { Link } from './link.tsx';
import { Mishap } from './mishap.tsx';

interface Props<T> {
  readonly of: ReadonlySignal<Kept<T>>;
  readonly again: () => void;
  /** The heading that stands for a whole screen until it is here. */
  readonly heading?: string;
  readonly children: (value: T) => VNode;
}

/** Shows a value once it is here; until then that it is coming, or why it does not come. */
export function Once<T>({ of, again, heading, children }: Props<T>): VNode {
  const { value, problem, waiting } = of.value;
  if (value !== null) return children(value);
  return (
    <>
      {heading !== undefined && <h1>{heading}</h1>}
      {problem ? (
        <>
          <Mishap problem={problem} again={again} />
          {problem.status === 404 && (
            <Link to={{ at: 'pads' }} class="button quiet">
              {words.toPads}
            </Link>
          )}
        </>
      ) : (
        <p class="waiting">{waiting ? words.waiting : ''}</p>
      )}
    </>
  );
}
