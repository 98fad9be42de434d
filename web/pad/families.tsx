import type { VNode } from 'preact';
import type { Pad } from '../../server/contract/pads.ts';
import { padWords } from '../words/pad.ts';
import { sideIn } from './sides.ts';
import { swatchAt } from './swatch-at.ts';

/** Every paper once, with those that are led by the same colour. */
export function Families({ pad, open }: { pad: Pad; open: (side: string) => void }): VNode | null {
  if (pad.families.length < 2) return null;
  return (
    <section aria-labelledby="families">
      <h2 id="families">{padWords.families}</h2>
      <ul class="families">
        {pad.families.map(({ name, hex, sides }) => (
          <li key={name} class="family">
            <span class="chip" style={{ background: hex }} />
            <span>
              <strong>{padWords.family(name)}</strong>{' '}
              <span class="small">{padWords.familySides(sides.length)}</span>
            </span>
            <div class="family-papers">
              {sides.map((id) => {
                const faced = sideIn(pad, id);
                if (!faced) return null;
                return (
                  <button key={id} type="button" class="swatch-button" onClick={() => open(id)}>
                    <img
                      src={swatchAt(faced.side.swatch, 44)}
                      alt={padWords.sideName(faced.sheet.label, faced.face)}
                      loading="lazy"
                      width="44"
                      height="44"
                    />
                  </button>
                );
              })}
            </div>
          </li>
        ))}
      </ul>
    </section>
  );
}
