import type { VNode } from 'preact';
import type { Pad } from '../../server/contract/pads.ts';
import type { Swap } from '../../server/contract/plans-again.ts';
import { Icon } from '../table/icon.tsx';
import { swatchAt } from '../pad/swatch-at.ts';
import { planWords } from '../words/plan.ts';

/** One sheet in the place of another, as two small pictures and in words. */
export function SwapLine({ swap, pad }: { swap: Swap; pad: Pad }): VNode {
  const [from, to] = [sheetIn(pad, swap.from), sheetIn(pad, swap.to)];
  return (
    <p class="swap-line">
      <SheetPicture pad={pad} sheet={swap.from} />
      <Icon name="next" />
      <SheetPicture pad={pad} sheet={swap.to} />
      <span>{planWords.else.swap(to?.label ?? '', from?.label ?? '', swap.cards)}</span>
    </p>
  );
}

/** Which sheets take the place of which, in words; unfolded when she asks. */
export function SwapWords({ swaps, pad }: { swaps: readonly Swap[]; pad: Pad }): VNode {
  return (
    <details class="more-reasons">
      <summary>{planWords.else.swaps(swaps.length)}</summary>
      <ul class="reasons">
        {swaps.map((swap) => (
          <li key={swap.slot}>
            <SwapLine swap={swap} pad={pad} />
          </li>
        ))}
      </ul>
    </details>
  );
}

/** A sheet by its front, or by its back when only that was photographed; its name stands beside it. */
export function SheetPicture({ pad, sheet }: { pad: Pad; sheet: string }): VNode {
  const found = sheetIn(pad, sheet);
  const side = found?.front ?? found?.back;
  const picture = side === undefined || side === null ? undefined : swatchAt(side.swatch, 84);
  return <img src={picture} alt="" width="64" height="64" loading="lazy" />;
}

export function sheetIn(pad: Pad, id: string): Pad['sheets'][number] | undefined {
  return pad.sheets.find((sheet) => sheet.id === id);
}
