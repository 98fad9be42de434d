import { useRef } from 'preact/hooks';
import type { VNode } from 'preact';
import type { Photo } from '../../server/contract/pads.ts';
import type { Corners } from '../../server/contract/values.ts';
import { photosWords } from '../words/photos.ts';

interface Props {
  readonly photo: Photo;
  readonly corners: Corners;
  /** While a corner is on its way. */
  readonly move: (corners: Corners) => void;
  /** When it has arrived. */
  readonly settle: (corners: Corners) => void;
  /** A touch beside the corners, in pixels of the photo. */
  readonly touch: (x: number, y: number) => void;
}

const arrows: Readonly<Record<string, readonly [number, number]>> = {
  ArrowLeft: [-1, 0],
  ArrowRight: [1, 0],
  ArrowUp: [0, -1],
  ArrowDown: [0, 1],
};
/** Saving waits for a pause of the keys, so that a walk of many steps is one correction. */
const PAUSE_MS = 500;

/** Four handles on the corners of a sheet: drag them, or walk them with the arrow keys (Shift for fine steps). */
export function CornerHandles({ photo, corners, move, settle, touch }: Props): VNode {
  const field = useRef<HTMLDivElement>(null);
  const pause = useRef(0);
  const { width, height } = photo;

  function at(index: number, x: number, y: number): Corners {
    const inside = [clamp(x, width), clamp(y, height)] as [number, number];
    return corners.map((corner, n) => (n === index ? inside : corner)) as Corners;
  }

  function placeOf(event: MouseEvent): [number, number] {
    const box = field.current!.getBoundingClientRect();
    const x = ((event.clientX - box.left) / box.width) * width;
    const y = ((event.clientY - box.top) / box.height) * height;
    return [x, y];
  }

  function under(index: number, event: PointerEvent): Corners {
    return at(index, ...placeOf(event));
  }

  function press(index: number, event: KeyboardEvent): void {
    const arrow = arrows[event.key];
    if (!arrow) return;
    event.preventDefault();
    const step = (Math.max(width, height) / 1000) * (event.shiftKey ? 1 : 5);
    const [x, y] = corners[index]!;
    const next = at(index, x + arrow[0] * step, y + arrow[1] * step);
    move(next);
    clearTimeout(pause.current);
    pause.current = window.setTimeout(() => settle(next), PAUSE_MS);
  }

  return (
    <div
      class="corner-handles"
      ref={field}
      onClick={(event) => {
        if (event.target === field.current) touch(...placeOf(event));
      }}
    >
      {corners.map(([x, y], index) => (
        <button
          key={photosWords.cornerNames[index]}
          type="button"
          class="corner-handle"
          aria-label={photosWords.corner(index)}
          style={{ left: `${(x / width) * 100}%`, top: `${(y / height) * 100}%` }}
          onPointerDown={(event) => event.currentTarget.setPointerCapture(event.pointerId)}
          onPointerMove={(event) => {
            if (event.currentTarget.hasPointerCapture(event.pointerId)) move(under(index, event));
          }}
          onPointerUp={(event) => {
            const held = event.currentTarget.hasPointerCapture(event.pointerId);
            event.currentTarget.releasePointerCapture(event.pointerId);
            if (held) settle(under(index, event));
          }}
          onKeyDown={(event) => press(index, event)}
        />
      ))}
    </div>
  );
}

function clamp(value: number, most: number): number {
  return Math.max(0, Math.min(most, Math.round(value)));
}
