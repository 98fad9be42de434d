import { useState } from 'preact/hooks';
import type { VNode } from 'preact';
import type { Photo } from '../../server/contract/pads.ts';
import { suppliesWords } from '../words/supplies.ts';

/** A place in a photo, in pixels of the upright photo. */
export interface TouchedPlace {
  readonly photo: string;
  readonly at: [number, number];
}

/** A photo of the pad, or one of supplies. */
type TouchablePhoto = Pick<Photo, 'id' | 'picture' | 'width' | 'height'>;

interface Props {
  readonly photos: readonly TouchablePhoto[];
  readonly touched: TouchedPlace | null;
  readonly touch: (place: TouchedPlace) => void;
}

/** A step of the arrow keys, as a part of the photo's width. */
const STEP = 0.01;

const walks: Readonly<Record<string, readonly [number, number]>> = {
  ArrowLeft: [-STEP, 0],
  ArrowRight: [STEP, 0],
  ArrowUp: [0, -STEP],
  ArrowDown: [0, STEP],
};

/** Chooses a photo that is here, and a place in it by a touch or by the arrow keys. */
export function TouchPhoto({ photos, touched, touch }: Props): VNode {
  const say = suppliesWords;
  const [chosen, setChosen] = useState(photos[0]!.id);
  const photo = photos.find(({ id }) => id === chosen) ?? photos[0]!;
  const here = touched?.photo === photo.id ? touched.at : null;

  function place(x: number, y: number): void {
    const within = (value: number, most: number): number => Math.min(Math.max(value, 0), most);
    touch({ photo: photo.id, at: [within(x, photo.width), within(y, photo.height)] });
  }

  return (
    <>
      <label class="field">
        <span>{say.whichPhoto}</span>
        <select value={photo.id} onChange={(event) => setChosen(event.currentTarget.value)}>
          {photos.map(({ id }, index) => (
            <option key={id} value={id}>
              {say.photoNamed(index + 1)}
            </option>
          ))}
        </select>
      </label>
      <p>
        {say.touchHow} <span class="for-keys">{say.touchKeys}</span>
      </p>
      <button
        type="button"
        class="touched-photo"
        aria-label={say.touchPhoto}
        onClick={(event) => {
          const box = event.currentTarget.getBoundingClientRect();
          // Enter has no place of its own: it keeps the ring, or sets it in the middle.
          if (event.detail === 0) {
            place(...(here ?? ([photo.width / 2, photo.height / 2] as const)));
            return;
          }
          const [x, y] = [event.clientX - box.left, event.clientY - box.top];
          place((x / box.width) * photo.width, (y / box.height) * photo.height);
        }}
        onKeyDown={(event) => {
          const walk = walks[event.key];
          if (walk === undefined) return;
          event.preventDefault();
          const [x, y] = here ?? [photo.width / 2, photo.height / 2];
          place(x + walk[0] * photo.width, y + walk[1] * photo.width);
        }}
      >
        <img src={photo.picture} alt="" width={photo.width} height={photo.height} />
        {here && (
          <span
            class="touched-place"
            style={{
              left: `${(100 * here[0]) / photo.width}%`,
              top: `${(100 * here[1]) / photo.height}%`,
            }}
          />
        )}
      </button>
    </>
  );
}
