import type { VNode } from 'preact';
import type { Pad } from '../../server/contract/pads.ts';
import { swatchAt } from './swatch-at.ts';
import { padWords } from '../words/pad.ts';
import { sideIn } from './sides.ts';

/** The prints that come in several colour choices, side by side. */
export function PatternSets({
  pad,
  open,
}: {
  pad: Pad;
  open: (side: string) => void;
}): VNode | null {
  if (pad.patternSets.length === 0) return null;
  return (
    <section aria-labelledby="sets">
      <h2 id="sets">{padWords.sets}</h2>
      <ul class="sets">
        {pad.patternSets.map((set) => (
          <li key={set.join()} class="set">
            {set.map((id) => {
              const faced = sideIn(pad, id);
              if (!faced) return null;
              return (
                <button key={id} type="button" class="swatch-button" onClick={() => open(id)}>
                  <img
                    src={swatchAt(faced.side.swatch, 84)}
                    alt={padWords.sideName(faced.sheet.label, faced.face)}
                    loading="lazy"
                    width="96"
                    height="96"
                  />
                </button>
              );
            })}
          </li>
        ))}
      </ul>
    </section>
  );
}
