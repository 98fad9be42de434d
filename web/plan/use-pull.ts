import type { RefObject } from 'preact';
import { useEffect, useRef } from 'preact/hooks';
import { at, from, letGo, over } from './pulled.ts';
import { sameSpot, type Spot } from './swap-papers.ts';

/** A mouse that moves so far pulls; a finger that moves so far before its time scrolls. In pixels. */
const FAR = 7;
/** A finger that rests so long pulls. */
const REST_MS = 320;
/** So near to an edge of the window the page is moved along, in pixels. */
const EDGE = 70;
const STEP = 14;

interface Pull {
  /** What lies at a place of the window; null beside the cards. */
  readonly spotAt: (x: number, y: number) => Spot | null;
  readonly drop: (from: Spot, to: Spot) => void;
}

interface Pressed {
  readonly id: number;
  readonly spot: Spot;
  readonly x: number;
  readonly y: number;
  readonly finger: boolean;
  readonly rest: number;
}

/** Lets papers be pulled from card to card within an element: by mouse at once, by finger after a moment's rest. */
export function usePull(pull: Pull): RefObject<HTMLUListElement | null> {
  const field = useRef<HTMLUListElement>(null);
  const now = useRef(pull);
  now.current = pull;
  useEffect(() => (field.current ? listen(field.current, now) : undefined), []);
  return field;
}

function listen(field: HTMLElement, now: { readonly current: Pull }): () => void {
  let pressed: Pressed | null = null;
  let justPulled = false;
  let walk = 0;
  const ways = new AbortController();
  const { signal } = ways;

  function press(event: PointerEvent): void {
    // A second finger joins no pull.
    if (pressed !== null) return;
    justPulled = false;
    const { clientX: x, clientY: y, pointerId: id } = event;
    const finger = event.pointerType === 'touch';
    const spot = now.current.spotAt(x, y);
    if (event.button !== 0 || spot === null) return;
    if (spot.layer === null && spot.plain === undefined) return;
    const rest = finger ? window.setTimeout(begin, REST_MS) : 0;
    pressed = { id, spot, x, y, finger, rest };
  }

  function begin(): void {
    if (!pressed) return;
    const { id, spot, x, y, finger } = pressed;
    field.setPointerCapture(id);
    at.value = { x, y, finger };
    from.value = spot;
    walk = window.setInterval(walkPage, 16);
  }

  function move(event: PointerEvent): void {
    if (event.pointerId !== pressed?.id) return;
    const { clientX: x, clientY: y } = event;
    if (from.peek() === null) {
      if (Math.hypot(x - pressed.x, y - pressed.y) < FAR) return;
      if (pressed.finger) stop();
      else begin();
    }
    if (from.peek() !== null) look(x, y);
  }

  function look(x: number, y: number): void {
    at.value = { ...at.peek(), x, y };
    const spot = now.current.spotAt(x, y);
    const next = spot && !sameSpot(spot, from.peek()) ? spot : null;
    if (!sameSpot(next, over.peek())) over.value = next;
  }

  function walkPage(): void {
    const { x, y } = at.peek();
    const by = y < EDGE ? -STEP : y > innerHeight - EDGE ? STEP : 0;
    if (by === 0) return;
    scrollBy(0, by);
    look(x, y);
  }

  function release(event: PointerEvent): void {
    if (event.pointerId !== pressed?.id) return;
    const [mine, theirs] = [from.peek(), over.peek()];
    const moved = Math.hypot(event.clientX - pressed.x, event.clientY - pressed.y) >= FAR;
    stop();
    if (mine === null) return;
    // Plain cardstock stays where it is: a long touch on it opens the card.
    justPulled = mine.layer !== null || moved;
    if (theirs !== null) now.current.drop(mine, theirs);
  }

  function stop(): void {
    clearTimeout(pressed?.rest);
    clearInterval(walk);
    pressed = null;
    letGo();
  }

  field.addEventListener('pointerdown', press, { signal });
  field.addEventListener('pointermove', move, { signal });
  field.addEventListener('pointerup', release, { signal });
  const cancel = (event: PointerEvent): void => {
    if (event.pointerId === pressed?.id) stop();
  };
  field.addEventListener('pointercancel', cancel, { signal });
  // A finger that pulls does not scroll.
  const hold = (event: Event): void => {
    if (from.peek() !== null && event.cancelable) event.preventDefault();
  };
  field.addEventListener('touchmove', hold, { signal, passive: false });
  field.addEventListener('contextmenu', hold, { signal });
  // The click that ends a pull opens no card.
  field.addEventListener(
    'click',
    (event) => {
      if (!justPulled) return;
      justPulled = false;
      event.preventDefault();
      event.stopPropagation();
    },
    { signal, capture: true },
  );
  addEventListener(
    'keydown',
    (event) => {
      if (event.key === 'Escape' && from.peek() !== null) stop();
    },
    { signal },
  );
  return () => {
    stop();
    ways.abort();
  };
}
