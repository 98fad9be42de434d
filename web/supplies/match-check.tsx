import { useState } from 'preact/hooks';
import type { VNode } from 'preact';
import type { Pad } from '../../server/contract/pads.ts';
import type { Supply } from '../../server/contract/supplies.ts';
import { sidesOf } from '../pad/sides.ts';
import { PaletteBands } from '../pad/palette-bands.tsx';
import { Once } from '../table/waiting.tsx';
import { words } from '../words.ts';
import { bestOfSide, padList, pads } from '../wire/shelves.ts';
import { BestBoard } from './best-board.tsx';
import { GreetingBoard } from './greeting-board.tsx';
import { MatchBoard } from './match-board.tsx';

/** Chooses a paper and lays the supplies against it. */
export function MatchCheck({
  pad,
  supplies,
}: {
  pad: string | null;
  supplies: readonly Supply[];
}): VNode {
  const [chosen, setChosen] = useState(pad);
  const list = padList.at('all').value.value ?? [];
  const open = chosen ?? list[0]?.id ?? null;
  return (
    <section class="match-check" aria-labelledby="match">
      <h2 id="match">{words.match.heading}</h2>
      <p>{words.match.lead}</p>
      {list.length > 1 && (
        <label class="field">
          <span>{words.match.pad}</span>
          <select value={open ?? ''} onChange={(event) => setChosen(event.currentTarget.value)}>
            {list.map((one) => (
              <option key={one.id} value={one.id}>
                {one.name}
              </option>
            ))}
          </select>
        </label>
      )}
      {open !== null && (
        <Once of={pads.at(open)} again={() => void pads.fresh(open)}>
          {(whole) => <Papers pad={whole} supplies={supplies} />}
        </Once>
      )}
    </section>
  );
}

function Papers({ pad, supplies }: { pad: Pad; supplies: readonly Supply[] }): VNode {
  const sides = sidesOf(pad);
  const [side, setSide] = useState<string | null>(null);
  const faced = sides.find((one) => one.side.id === side) ?? null;
  return (
    <>
      <ul class="swatch-row" aria-label={words.match.papers}>
        {sides.map((one) => (
          <li key={one.side.id}>
            <button
              type="button"
              class="swatch-button"
              aria-pressed={one.side.id === side}
              onClick={() => setSide(one.side.id)}
            >
              <img
                src={one.side.swatch}
                alt={words.pad.sideName(one.sheet.label, one.face)}
                loading="lazy"
                width="84"
                height="84"
              />
              <PaletteBands palette={one.side.palette} />
            </button>
          </li>
        ))}
      </ul>
      {faced && <MatchBoard faced={faced} supplies={supplies} />}
      {faced && <Best side={faced.side.id} supplies={supplies} />}
    </>
  );
}

/** Asked anew when her supplies change: the key names them. */
function Best({ side, supplies }: { side: string; supplies: readonly Supply[] }): VNode {
  const key = `${side}/${supplies.map(({ id, revision }) => `${id}.${revision}`).join()}`;
  return (
    <Once of={bestOfSide.at(key)} again={() => void bestOfSide.fresh(key)}>
      {(best) => (
        <>
          <GreetingBoard best={best} />
          <BestBoard best={best} />
        </>
      )}
    </Once>
  );
}
