/** Calls back when she returns to this tab, or the device returns to the network: what is shown may be old. */
export function onComingBack(act: () => void): void {
  addEventListener('online', act);
  document.addEventListener('visibilitychange', () => {
    if (document.visibilityState === 'visible') act();
  });
}
