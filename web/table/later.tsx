import { signal } from '@preact/signals';
import type { ComponentType, VNode } from 'preact';
import { useEffect, useState } from 'preact/hooks';
import { mishapWords } from '../words/mishap.ts';
import { words } from '../words/words.ts';
import { TOLD_AFTER, WAITS } from '../wire/lost.ts';
import { onComingBack } from './coming-back.ts';
import { Mishap } from './mishap.tsx';

/** A part of the page that is fetched when it is first shown, or ahead of that. */
export interface Later<P> {
  readonly Part: (props: P) => VNode;
  /** Fetches it now, so that it is at once there when it is shown. */
  readonly ahead: () => Promise<void>;
}

/**
 * Leaves a part of the page out of what is sent first.
 *
 * Takes       how it is fetched; a file that did not come is asked for anew the next time.
 */
export function later<P extends object>(load: () => Promise<ComponentType<P>>): Later<P> {
  // A signal, because it may come between the drawing of a part and its effect.
  const here = signal<ComponentType<P> | null>(null);
  let coming: Promise<void> | null = null;

  function ahead(): Promise<void> {
    coming ??= load().then(
      (part) => {
        here.value = part;
      },
      (fault: unknown) => {
        coming = null;
        throw fault;
      },
    );
    return coming;
  }

  function Part(props: P): VNode {
    const Here = here.value;
    const [lost, setLost] = useState(false);
    useEffect(() => {
      if (here.peek() === null) return untilHere(ahead, () => setLost(true));
    }, []);
    if (Here !== null) return <Here {...props} />;
    return <div class="screen">{lost ? <Lost /> : <p class="waiting">{words.waiting}</p>}</div>;
  }

  return { Part, ahead };
}

/**
 * Fetches until it is here, at once and after the usual waits, and whenever she or the network comes back.
 * Tells that it is lost when it did not come several times. Gives the way to stop.
 */
function untilHere(ahead: () => Promise<void>, tellLost: () => void): () => void {
  let tries = 0;
  let timer = 0;
  let looked = true;
  const stops = onComingBack(() => {
    if (timer !== 0 || tries > WAITS.length) go();
  });

  function go(): void {
    clearTimeout(timer);
    timer = 0;
    ahead().then(stop, () => {
      if (!looked) return;
      const wait = WAITS[tries];
      tries += 1;
      // A newer page may have taken its place: then it does not come, and she is told soon.
      if (tries === TOLD_AFTER) tellLost();
      if (wait !== undefined) timer = window.setTimeout(go, wait);
    });
  }

  function stop(): void {
    looked = false;
    clearTimeout(timer);
    stops();
  }

  go();
  return stop;
}

/** A newer page has other files than the one that is open: read anew, it has them all. */
function Lost(): VNode {
  const problem = {
    type: 'about:blank',
    title: mishapWords.title,
    status: 0,
    detail: mishapWords.screen,
    mend: mishapWords.screenMend,
  };
  return <Mishap problem={problem} again={() => location.reload()} />;
}
