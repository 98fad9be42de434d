import type { VNode } from 'preact';
import type { Pin } from '../../server/contract/plans.ts';
import type { LayoutListing } from '../../server/contract/layouts.ts';
import { layerPath } from '../layouts/layer-path.ts';
import { millimetres } from '../lengths/lengths.ts';
import { sideIn } from '../pad/sides.ts';
import { swatchAt } from '../pad/swatch-at.ts';
import { padWords } from '../words/pad.ts';
import { planWords } from '../words/plan.ts';
import { ROOM } from './paper-under.ts';
import { at, from, over } from './pulled.ts';
import { hindering, sideAt, whyNot, type Spot } from './swap-papers.ts';
import type { OnTable } from './table-of.ts';

/** The paper under the finger, and what would become of it if it were let go here. */
export function PulledPaper({
  table: { plan, pad },
  pins,
}: {
  table: OnTable;
  pins: readonly Pin[];
}): VNode | null {
  const mine = from.value;
  if (!mine) return null;
  const faced = sideIn(pad, sideAt(plan.cards, mine) ?? undefined);
  if (!faced && mine.plain === undefined) return null;
  const { x, y, finger } = at.value;
  const theirs = over.value;
  const no =
    mine.plain === undefined
      ? theirs && ruledOut({ plan, pad }, pins, mine, theirs)
      : planWords.pull.plainHere(mine.plain);
  return (
    <div
      class={finger ? 'pulled by-finger' : 'pulled'}
      style={{ transform: `translate(${x}px, ${y}px)`, '--x': `${x}px`, '--y': `${y}px` }}
    >
      {faced && <img src={swatchAt(faced.side.swatch, 88)} alt="" width="88" height="88" />}
      <span class={no === null ? 'pulled-words' : 'pulled-words no'}>
        {no ?? (theirs ? planWords.pull.swap(nameAt(theirs)) : planWords.pull.onto)}
      </span>
    </div>
  );

  function nameAt(spot: Spot): string {
    const there = sideIn(pad, sideAt(plan.cards, spot) ?? undefined);
    return there ? padWords.sideName(there.sheet.label, there.face) : '';
  }
}

/** Why not, in words; what she keeps may rule it out too: it can be let go all the same, and is then asked. */
function ruledOut(
  { plan, pad }: Pick<OnTable, 'plan' | 'pad'>,
  pins: readonly Pin[],
  mine: Spot,
  theirs: Spot,
): string | null {
  const no = whyNot(plan.cards, mine, theirs);
  if (no !== null) return no;
  const copies = (id: string): number => pad.sheets.find((one) => one.id === id)?.copies ?? 1;
  const [pin] = hindering(plan, pins, mine, theirs, copies);
  const there = pin && sideIn(pad, pin.side);
  return there ? planWords.pull.kept(there.sheet.label, pin.card) : null;
}

interface Props {
  readonly card: number;
  readonly layout: LayoutListing | undefined;
  readonly table: OnTable;
  readonly pins: readonly Pin[];
}

/** On the picture of a card: the paper that is pulled off it, or the one on which another would be let go. */
export function PullMarks({ card, layout, table, pins }: Props): VNode | null {
  const mine = from.value;
  const theirs = over.value;
  const spots = [mine, theirs].filter((spot) => spot?.card === card);
  if (!mine || !layout || spots.length === 0) return null;
  const [width, height] = [layout.card.width, layout.card.height].map(
    (side) => (millimetres(side) ?? 0) + 2 * ROOM,
  );
  const fits = theirs !== null && ruledOut(table, pins, mine, theirs) === null;
  return (
    <svg class="pull-marks" viewBox={`${-ROOM} ${-ROOM} ${width} ${height}`} aria-hidden="true">
      {spots.map((spot) => {
        const layer = layout.layers.find(({ id }) => id === spot?.layer);
        if (!layer) return null;
        const look = spot === mine ? 'pull-mark mine' : fits ? 'pull-mark fits' : 'pull-mark no';
        return <path key={layer.id} class={look} d={layerPath(layer)} />;
      })}
    </svg>
  );
}
