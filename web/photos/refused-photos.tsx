import type { VNode } from 'preact';
import { Icon } from '../table/icon.tsx';
import { Mishap } from '../table/mishap.tsx';
import { photosWords } from '../words/photos.ts';
import { stop } from './queue.ts';
import { holdsPlace, sendings } from './sending.ts';

/** The files that the service refused, each with its reason and its mend; they hold no place on a table. */
export function RefusedPhotos({ pad }: { pad: string }): VNode | null {
  const refused = sendings.value.filter((one) => one.pad === pad && !holdsPlace(one));
  if (refused.length === 0) return null;
  return (
    <ul class="refused-photos" aria-label={photosWords.refused}>
      {refused.map(({ id, name, problem }) => (
        <li key={id}>
          <p class="refused-name">
            <strong>{name}</strong>
          </p>
          {problem && <Mishap problem={problem} />}
          <button
            type="button"
            class="button quiet"
            aria-label={photosWords.stopOne(name)}
            onClick={() => stop(id)}
          >
            <Icon name="close" /> {photosWords.stop}
          </button>
        </li>
      ))}
    </ul>
  );
}
