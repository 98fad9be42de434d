import { useEffect } from 'preact/hooks';
import type { Pad } from '../../server/contract/pads.ts';
import { millimetres } from '../lengths/lengths.ts';
import { sidesOf } from '../pad/sides.ts';
import { whenIdle } from '../table/when-idle.ts';
import { fetchPaper } from './card-pictures.ts';

/** The pictures of the cards come first; after so long there is time for papers that lie on none yet. */
const LATER_MS = 1500;

/** Fetches every paper of a pad, one after the other, so that a card that takes another is drawn at once. */
export function usePapersAhead(pad: Pad): void {
  useEffect(() => {
    let looked = true;
    const timer = setTimeout(() => whenIdle(() => void fetchAll()), LATER_MS);
    async function fetchAll(): Promise<void> {
      const width = millimetres(pad.sheetSize.width) ?? 0;
      for (const { side } of sidesOf(pad)) {
        if (!looked) return;
        // One that does not come is fetched when a card shows it.
        await fetchPaper(side.swatch, width).catch(() => undefined);
      }
    }
    return () => {
      looked = false;
      clearTimeout(timer);
    };
  }, [pad.id, pad.revision]);
}
