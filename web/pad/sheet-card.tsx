import type { VNode } from 'preact';
import type { Sheet, Side } from '../../server/contract/pads.ts';
import { Icon } from '../table/icon.tsx';
import { swatchAt } from './swatch-at.ts';
import { padWords } from '../words/pad.ts';
import { PaletteBands } from './palette-bands.tsx';
import { SheetName } from './sheet-name.tsx';

interface Props {
  readonly pad: string;
  readonly sheet: Sheet;
  readonly bridge: boolean;
  /** The sides that carry the colour she touched, or null when she touched none. */
  readonly lit: ReadonlySet<string> | null;
  readonly open: (side: string) => void;
}

/** One paper of the pad: both its faces as pictures, each with its palette. */
export function SheetCard({ pad, sheet, bridge, lit, open }: Props): VNode {
  return (
    <article class="sheet" aria-label={padWords.sheetName(sheet.label)}>
      <div class="faces">
        <Face sheet={sheet} face="front" side={sheet.front} lit={lit} open={open} />
        <Face sheet={sheet} face="back" side={sheet.back} lit={lit} open={open} />
      </div>
      <footer>
        <SheetName pad={pad} sheet={sheet} />
        {sheet.copies > 1 && <span class="small">{padWords.copies(sheet.copies)}</span>}
        {bridge && (
          <span class="tag">
            <Icon name="bridge" /> {padWords.bridge}
          </span>
        )}
      </footer>
    </article>
  );
}

interface FaceProps extends Omit<Props, 'pad' | 'bridge'> {
  readonly face: 'front' | 'back';
  readonly side: Side | null;
}

function Face({ sheet, face, side, lit, open }: FaceProps): VNode {
  if (!side) return <div class="face missing">{padWords.missing[face]}</div>;
  const dim = lit !== null && !lit.has(side.id);
  return (
    <button
      type="button"
      class={dim ? 'face dim' : 'face'}
      aria-label={padWords.openSide(sheet.label, face)}
      onClick={() => open(side.id)}
    >
      <img src={swatchAt(side.swatch, 220)} alt="" loading="lazy" width="220" height="220" />
      <PaletteBands palette={side.palette} />
    </button>
  );
}
