import type { VNode } from 'preact';
import { Icon } from '../table/icon.tsx';
import { Mishap } from '../table/mishap.tsx';
import { photosWords } from '../words/photos.ts';
import { retry, stop } from './queue.ts';
import type { Sending } from './sending.ts';

/** A photo on its way: its picture, how far it is, what went wrong and what to do about it. */
export function SendingCard({ sending }: { sending: Sending }): VNode {
  const { id, name, state, sent, found, problem, thumbnail } = sending;
  return (
    <div class={`sending ${state}`}>
      {thumbnail ? <img src={thumbnail} alt="" /> : <span class="sending-blank">{name}</span>}
      {problem ? (
        <Mishap problem={problem} again={() => retry(id)} />
      ) : (
        <p class="sending-words">{photosWords.states[state](sent, found)}</p>
      )}
      {!problem && <progress class="ruler-progress" value={sent} max="1" aria-label={name} />}
      <button
        type="button"
        class="button quiet"
        aria-label={photosWords.stopOne(name)}
        onClick={() => stop(id)}
      >
        <Icon name="close" /> {photosWords.stop}
      </button>
    </div>
  );
}
