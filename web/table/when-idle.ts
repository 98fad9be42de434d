/** Does something once the browser has nothing better to do; not every browser says when that is. */
export function whenIdle(act: () => void): void {
  if ('requestIdleCallback' in window) requestIdleCallback(act, { timeout: 3000 });
  else setTimeout(act, 1000);
}
