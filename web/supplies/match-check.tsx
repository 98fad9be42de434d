import { useLayoutEffect, useRef, useState } from 'preact/hooks';
import type { VNode } from 'preact';
import type { Pad } from '../../server/contract/pads.ts';
import type { Supply } from '../../server/contract/supplies.ts';
import { sidesOf } from '../pad/sides.ts';
import { PaletteBands } from '../pad/palette-bands.tsx';
import { Once } from '../table/waiting.tsx';
import { matchWords } from '../words/match.ts';
import { padWords } from '../words/pad.ts';
import { padList, pads } from '../wire/shelves.ts';
import { besidePad } from './beside.ts';
import { PaperCheck } from './paper-check.tsx';

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
      <h2 id="match">{matchWords.heading}</h2>
      <p>{matchWords.lead}</p>
      {list.length > 1 && (
        <label class="field">
          <span>{matchWords.pad}</span>
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
          {(whole) => <Papers pad={whole} supplies={besidePad(supplies, whole.id)} />}
        </Once>
      )}
    </section>
  );
}

function Papers({ pad, supplies }: { pad: Pad; supplies: readonly Supply[] }): VNode {
  const sides = sidesOf(pad);
  const [side, setSide] = useState<string | null>(null);
  const faced = sides.find((one) => one.side.id === side) ?? null;
  const check = useRef<HTMLDivElement>(null);
  // On a phone the answer lies below the papers: it comes up by itself.
  useLayoutEffect(() => {
    if (side !== null) check.current?.scrollIntoView({ block: 'start' });
  }, [side]);
  return (
    <>
      <ul class="swatch-row" aria-label={matchWords.papers}>
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
                alt={padWords.sideName(one.sheet.label, one.face)}
                loading="lazy"
                width="84"
                height="84"
              />
              <PaletteBands palette={one.side.palette} />
            </button>
          </li>
        ))}
      </ul>
      <div ref={check}>
        {faced && <PaperCheck key={faced.side.id} faced={faced} supplies={supplies} />}
      </div>
    </>
  );
}
