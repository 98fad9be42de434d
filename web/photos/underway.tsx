import type { VNode } from 'preact';
import { photosWords } from '../words/photos.ts';
import type { Sending } from './sending.ts';

/** How many photos are on their way, said before all else; each shows its own progress in its place. */
export function UnderwayLine({ sendings }: { sendings: readonly Sending[] }): VNode | null {
  const going = sendings.filter(({ state }) => state !== 'refused').length;
  if (going === 0) return null;
  return (
    <p class="underway" role="status">
      {photosWords.underway(going)}
    </p>
  );
}
