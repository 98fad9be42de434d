import { useState } from 'preact/hooks';
import type { ComponentChildren, VNode } from 'preact';
import type { Photo } from '../../server/contract/pads.ts';
import { photosWords } from '../words/photos.ts';

/** A touched place, in pixels of the photo. */
export type Place = readonly [x: number, y: number];

/** How a photo is tied to the others of its pad. */
export type Tie = Photo['chips']['tie'];

/** A photo of sheets or of supplies. */
type Touched = Pick<Photo, 'width' | 'height' | 'chips'>;

interface Props {
  readonly photo: Touched;
  /** How the photo is tied, in words for each way. */
  readonly tied?: Readonly<Record<Tie, string>>;
  readonly saving: boolean;
  /** Sends the touched places; the photo is read again, and is tied so. Null when it could not be read. */
  readonly show: (places: readonly Place[]) => Promise<Tie | null>;
  readonly children: ComponentChildren;
}

const arrows: Readonly<Record<string, Place>> = {
  ArrowLeft: [-1, 0],
  ArrowRight: [1, 0],
  ArrowUp: [0, -1],
  ArrowDown: [0, 1],
};
/** Fewer tell no curve of light; more are not taken. */
const FEWEST = 3;
const MOST = 12;

/** The photo, on which each scrap is touched once: by hand, or by a cross that the arrow keys walk. */
export function ScrapTouch({
  photo,
  tied = photosWords.scrapsTied,
  saving,
  show,
  children,
}: Props): VNode {
  const { width, height } = photo;
  const [places, setPlaces] = useState<readonly Place[]>([]);
  const [cross, setCross] = useState<Place>([width / 2, height / 2]);
  const [failed, setFailed] = useState(false);

  function walk(event: KeyboardEvent): void {
    const arrow = arrows[event.key];
    if (!arrow) return;
    event.preventDefault();
    const step = (Math.max(width, height) / 100) * (event.shiftKey ? 0.2 : 1);
    setCross(([x, y]) => [clamp(x + arrow[0] * step, width), clamp(y + arrow[1] * step, height)]);
  }

  function touch(event: MouseEvent & { readonly currentTarget: Element }): void {
    if (places.length >= MOST) return;
    setFailed(false);
    const box = event.currentTarget.getBoundingClientRect();
    const byKey = event.detail === 0;
    const x = ((event.clientX - box.left) / box.width) * width;
    const y = ((event.clientY - box.top) / box.height) * height;
    const [atX, atY] = byKey ? cross : [clamp(x, width), clamp(y, height)];
    setPlaces([...places, [Math.round(atX), Math.round(atY)]]);
  }

  async function read(): Promise<void> {
    const tie = await show(places);
    setFailed(tie === 'none');
    if (tie !== null && tie !== 'none') setPlaces([]);
  }

  return (
    <>
      <div class={saving ? 'corner-field busy' : 'corner-field'} aria-busy={saving}>
        {children}
        <button
          type="button"
          class="scrap-field"
          aria-label={photosWords.scrapsTap}
          onKeyDown={walk}
          onClick={touch}
        >
          <span class="scrap-cross" style={placed(cross, photo)} />
        </button>
        {places.map((place, index) => (
          <button
            key={place.join(' ')}
            type="button"
            class="scrap-mark"
            aria-label={photosWords.scrap(index + 1)}
            style={placed(place, photo)}
            onClick={() => setPlaces(places.filter((one) => one !== place))}
          >
            <span>{index + 1}</span>
          </button>
        ))}
      </div>
      <p class="small">{tied[photo.chips.tie]}</p>
      <p role="status" class="small">
        {failed ? photosWords.scrapsSaved.none : photosWords.scrapsTouched(places.length)}
      </p>
      <div class="ends">
        <button
          type="button"
          class="button"
          disabled={saving || places.length < FEWEST}
          onClick={() => void read()}
        >
          {photosWords.scrapsRead}
        </button>
        <button
          type="button"
          class="button quiet"
          disabled={saving || places.length === 0}
          onClick={() => setPlaces([])}
        >
          {photosWords.scrapsAgain}
        </button>
      </div>
    </>
  );
}

function placed([x, y]: Place, { width, height }: Touched): { left: string; top: string } {
  return { left: `${(100 * x) / width}%`, top: `${(100 * y) / height}%` };
}

function clamp(value: number, most: number): number {
  return Math.max(0, Math.min(most, value));
}
