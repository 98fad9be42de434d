/** Waits between tries, in milliseconds: a service that starts again, or a network that hiccups, is back by then. */
const WAITS = [500, 1000, 2000, 4000, 8000];

/** A picture that did not come is asked for again, as a browser by itself leaves its place blank for good. */
export function fetchLostPicturesAgain(): void {
  const tries = new WeakMap<HTMLImageElement, { readonly of: string; readonly count: number }>();
  addEventListener(
    'error',
    ({ target }) => {
      if (!(target instanceof HTMLImageElement)) return;
      const { src } = target;
      const before = tries.get(target);
      const count = before?.of === src ? before.count : 0;
      const wait = WAITS[count];
      if (wait === undefined || !src.startsWith('http')) return;
      tries.set(target, { of: src, count: count + 1 });
      setTimeout(() => {
        // Meanwhile it may show something else.
        if (target.isConnected && target.src === src) target.src = src;
      }, wait);
    },
    // Faults of pictures do not rise; they are met on their way down.
    { capture: true },
  );
}
