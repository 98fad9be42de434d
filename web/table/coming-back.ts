/** Calls back when she returns to this tab, or the device returns to the network: what is shown may be old. Gives the way to stop it. */
export function onComingBack(act: () => void): () => void {
  const stop = new AbortController();
  const { signal } = stop;
  addEventListener('online', act, { signal });
  document.addEventListener(
    'visibilitychange',
    () => {
      if (isSeen()) act();
    },
    { signal },
  );
  return () => stop.abort();
}

/** Whether she may look at this tab. */
export function isSeen(): boolean {
  return document.visibilityState === 'visible';
}
