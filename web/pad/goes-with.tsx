import type { VNode } from 'preact';
import type { Pad } from '../../server/contract/pads.ts';
import { Once } from '../table/waiting.tsx';
import { swatchAt } from './swatch-at.ts';
import { padWords } from '../words/pad.ts';
import { words } from '../words/words.ts';
import { companions } from '../wire/shelves.ts';
import { sideIn } from './sides.ts';

interface Props {
  readonly pad: Pad;
  readonly side: string;
  readonly show: (side: string) => void;
}

/** The other papers in the order in which they go with this one, each with the reason. */
export function GoesWith({ pad, side, show }: Props): VNode {
  const key = `${pad.id}/${side}`;
  return (
    <section class="goes-with" aria-labelledby="goes-with">
      <h3 id="goes-with">{padWords.goesWith}</h3>
      <p class="small">{padWords.goesWithHow}</p>
      <Once of={companions.at(key)} again={() => void companions.fresh(key)}>
        {(list) => (
          <ol>
            {list.slice(0, 12).map((companion) => {
              const faced = sideIn(pad, companion.side);
              if (!faced) return null;
              const name = padWords.sideName(faced.sheet.label, faced.face);
              return (
                <li key={companion.side}>
                  <button type="button" class="companion" onClick={() => show(companion.side)}>
                    <img
                      src={swatchAt(faced.side.swatch, 88)}
                      alt=""
                      loading="lazy"
                      width="88"
                      height="88"
                    />
                    <span>
                      <strong>{name}</strong>
                      <span class="score-words">{words.goes(companion.score)}</span>
                      <span class="small">{companion.why}</span>
                    </span>
                  </button>
                </li>
              );
            })}
          </ol>
        )}
      </Once>
    </section>
  );
}
