import { asProblem } from '../wire/ask.ts';
import { service } from '../wire/service.ts';
import { me } from '../wire/shelves.ts';
import { announce } from '../table/announce.tsx';
import { go, place } from '../table/way.ts';
import { phoneWords } from '../words/phone.ts';

/**
 * A code that came behind the # of the address is turned into a key, once, and taken out of the address, so
 * that it stays in no history. The key itself lies in a cookie that no script can read.
 */
export async function useCodeInAddress(): Promise<void> {
  const code = /^#code=([\w-]{20,80})$/.exec(location.hash)?.[1];
  if (code === undefined) return;
  history.replaceState(null, '', location.pathname);
  announce(phoneWords.opening);
  try {
    const { pad } = await service.bringCode(code);
    await me.fresh('all');
    if (pad !== null) go({ at: 'photos', pad, plan: null });
    else place.value = { ...place.peek() };
  } catch (fault) {
    // A device that has a key already needs no other; one without is told so by every screen.
    announce(asProblem(fault).detail);
  }
}

// The address with a code opened in a window that stands on the page already changes only what is behind the #.
addEventListener('hashchange', () => {
  if (location.hash.startsWith('#code=')) location.reload();
});
