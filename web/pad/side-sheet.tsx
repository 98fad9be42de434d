import type { VNode } from 'preact';
import type { Pad } from '../../server/contract/pads.ts';
import { Dialog } from '../table/dialog.tsx';
import { ruler } from '../table/settings.ts';
import { lengthFor } from '../lengths/lengths.ts';
import { padWords } from '../words/pad.ts';
import { isPhone } from '../wire/is-phone.ts';
import { PaletteWords } from './palette-words.tsx';
import { sideIn } from './sides.ts';
import { SheetFacts } from './sheet-facts.tsx';
import { GoesWith } from './goes-with.tsx';
import { UpChoice } from './up-choice.tsx';

interface Props {
  readonly pad: Pad;
  readonly side: string;
  /** Opens another side in its place, or closes with null. */
  readonly show: (side: string | null) => void;
}

/** One side close up: its picture, its colours in words, and what goes with it. */
export function SideSheet({ pad, side, show }: Props): VNode | null {
  const faced = sideIn(pad, side);
  if (!faced) return null;
  const { pattern, palette, notes, swatch } = faced.side;
  return (
    <Dialog title={padWords.sideName(faced.sheet.label, faced.face)} close={() => show(null)} wide>
      <div class="close-up">
        <img class="close-up-picture" src={swatch} alt={padWords.palette(palette)} />
        <div>
          <PaletteWords palette={palette} />
          <p>
            {padWords.traits(
              pattern,
              pattern.repeat === null ? null : lengthFor(pattern.repeat, ruler.value),
            )}
          </p>
          {notes.map((note) => (
            <p key={note} class="small">
              {note}
            </p>
          ))}
          {!isPhone() && <UpChoice pad={pad.id} side={faced.side} />}
          {!isPhone() && <SheetFacts pad={pad.id} sheet={faced.sheet} />}
        </div>
      </div>
      <GoesWith pad={pad} side={side} show={show} />
    </Dialog>
  );
}
