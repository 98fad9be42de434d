import type { VNode } from 'preact';
import type { PaletteColour } from '../../server/contract/pads.ts';
import { labFromBytes } from './typed-colour.ts';

/** Where she touched a paper, as parts of its width and height. */
export interface Spot {
  readonly x: number;
  readonly y: number;
}

interface Props {
  readonly swatch: string;
  readonly palette: readonly PaletteColour[];
  readonly spot: Spot | null;
  /** Takes the place in the palette of the colour under the touch. */
  readonly pick: (colour: number, spot: Spot) => void;
}

/** A paper at its largest; the spot that is touched chooses the palette colour under it. Keys choose by the palette. */
export function TappedSwatch({ swatch, palette, spot, pick }: Props): VNode {
  function touch(event: MouseEvent): void {
    const picture = (event.currentTarget as HTMLElement).querySelector('img');
    if (picture === null || picture.naturalWidth === 0) return;
    const box = picture.getBoundingClientRect();
    const [x, y] = [(event.clientX - box.left) / box.width, (event.clientY - box.top) / box.height];
    pick(colourAt(picture, palette, x, y), { x, y });
  }

  return (
    <button
      type="button"
      class="tapped-swatch"
      tabIndex={-1}
      aria-hidden="true"
      onClick={(event) => touch(event)}
    >
      <img src={swatch} alt="" />
      {spot && (
        <span class="touched-place" style={{ left: `${100 * spot.x}%`, top: `${100 * spot.y}%` }} />
      )}
    </button>
  );
}

/** Pixels a side that are looked at around the touch, of those that the picture holds: a fingertip hides more. */
const AROUND = 9;

function colourAt(
  picture: HTMLImageElement,
  palette: readonly PaletteColour[],
  x: number,
  y: number,
): number {
  const context = document.createElement('canvas').getContext('2d')!;
  const left = x * picture.naturalWidth - AROUND / 2;
  const top = y * picture.naturalHeight - AROUND / 2;
  context.drawImage(picture, left, top, AROUND, AROUND, 0, 0, AROUND, AROUND);
  const { data } = context.getImageData(0, 0, AROUND, AROUND);
  const votes = palette.map(() => 0);
  for (let at = 0; at < data.length; at += 4)
    if (data[at + 3]! > 0) votes[nearestIn(palette, data[at]!, data[at + 1]!, data[at + 2]!)]! += 1;
  return votes.indexOf(Math.max(...votes));
}

function nearestIn(palette: readonly PaletteColour[], r: number, g: number, b: number): number {
  const seen = labFromBytes(r, g, b);
  const away = palette.map(({ lab }) =>
    Math.hypot(lab[0] - seen[0], lab[1] - seen[1], lab[2] - seen[2]),
  );
  return away.indexOf(Math.min(...away));
}
