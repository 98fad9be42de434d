import type { VNode } from 'preact';
import type { Photo } from '../../server/contract/pads.ts';
import type { Corners } from '../../server/contract/values.ts';
import { photosWords } from '../words/photos.ts';

interface Props {
  readonly photo: Photo;
  readonly place: (corners: Corners) => void;
}

/** A clear sheet over the photo that takes one tap: there lies the white card. Enter taps the middle. */
export function WhiteCardTap({ photo, place }: Props): VNode {
  return (
    <button
      type="button"
      class="white-tap"
      aria-label={photosWords.whiteTap}
      onClick={(event) => {
        const box = event.currentTarget.getBoundingClientRect();
        const byKey = event.detail === 0;
        const x = byKey ? 0.5 : (event.clientX - box.left) / box.width;
        const y = byKey ? 0.5 : (event.clientY - box.top) / box.height;
        place(squareAround(x * photo.width, y * photo.height, photo));
      }}
    />
  );
}

/** A square that a white card laid beside the sheets usually covers; its corners can be moved after. */
function squareAround(x: number, y: number, { width, height }: Photo): Corners {
  const half = Math.max(width, height) / 50;
  const cx = Math.min(Math.max(x, half), width - half);
  const cy = Math.min(Math.max(y, half), height - half);
  return [
    [cx - half, cy - half],
    [cx + half, cy - half],
    [cx + half, cy + half],
    [cx - half, cy + half],
  ];
}
