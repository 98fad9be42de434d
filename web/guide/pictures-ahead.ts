import { useEffect } from 'preact/hooks';
import { whenIdle } from '../table/when-idle.ts';
import type { Step } from './step.ts';

/** Pictures of the guide on the table, held so that the browser shows them without asking again. */
const held = new Map<string, HTMLImageElement>();
/** So many are asked for at once: the step at hand comes first. */
const AT_ONCE = 2;

/**
 * Fetches the pictures of all steps, one after the other: at the table the service may be out of reach by the
 * time they are wanted, and over plain http no offline worker keeps them.
 */
export function usePicturesAhead(steps: readonly Step[]): void {
  const wanted = steps.flatMap(({ picture }) => (picture === null ? [] : [picture.src]));
  const said = wanted.join(' ');
  useEffect(() => {
    for (const src of held.keys()) if (!wanted.includes(src)) held.delete(src);
    const waiting = wanted.filter((src) => !held.has(src));
    let looked = true;
    const next = (): void => {
      const src = looked ? waiting.shift() : undefined;
      if (src === undefined) return;
      const picture = new Image();
      picture.onload = next;
      picture.onerror = () => {
        // Asked for again when its step is opened, or when the steps change.
        held.delete(src);
        next();
      };
      held.set(src, picture);
      picture.src = src;
    };
    whenIdle(() => {
      for (let n = 0; n < AT_ONCE; n += 1) next();
    });
    return () => {
      looked = false;
    };
  }, [said]);
}
