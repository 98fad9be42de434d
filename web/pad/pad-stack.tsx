import type { VNode } from 'preact';
import type { PadSummary } from '../../server/contract/pads.ts';
import { sizeFor } from '../lengths/lengths.ts';
import { Link } from '../table/link.tsx';
import { ruler } from '../table/settings.ts';
import { padsWords } from '../words/pads.ts';
import { pads } from '../wire/shelves.ts';
import { sidesOf } from './sides.ts';
import { swatchAt } from './swatch-at.ts';

const FANNED = 4;

/** A pad as a stack of its papers: four of them fanned, its colours as a strip below. */
export function PadStack({ pad }: { pad: PadSummary }): VNode {
  const whole = pads.at(pad.id).value.value;
  const shown = whole ? sidesOf(whole).slice(0, FANNED) : [];
  return (
    <Link
      to={{ at: pad.sheetCount === 0 ? 'photos' : 'pad', pad: pad.id, plan: null }}
      class="pad-stack"
    >
      <span class="pad-fan" aria-hidden="true">
        {shown.map(({ side }) => (
          <img
            key={side.id}
            src={swatchAt(side.swatch, 136)}
            alt=""
            loading="lazy"
            width="150"
            height="150"
          />
        ))}
        {shown.length === 0 && blanks(pad).map((n) => <span key={n} class="pad-blank" />)}
      </span>
      <strong>{pad.name}</strong>
      <span class="small">
        {padsWords.summary(pad.sheetCount, sizeFor(pad.sheetSize, ruler.value))}
      </span>
    </Link>
  );
}

/** Papers that are on their way stand as bare ones; a pad without any is one bare place. */
function blanks({ sheetCount }: PadSummary): number[] {
  return [...Array(Math.max(1, Math.min(FANNED, sheetCount))).keys()];
}
