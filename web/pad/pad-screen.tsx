import { useState } from 'preact/hooks';
import type { VNode } from 'preact';
import type { Pad } from '../../server/contract/pads.ts';
import { LeftStock } from '../leftovers/left-stock.tsx';
import { Icon } from '../table/icon.tsx';
import { Link } from '../table/link.tsx';
import { Once } from '../table/waiting.tsx';
import { padWords } from '../words/pad.ts';
import { words } from '../words/words.ts';
import { isPhone } from '../wire/is-phone.ts';
import { pads } from '../wire/shelves.ts';
import { ColourStory } from './colour-story.tsx';
import { Families } from './families.tsx';
import { PatternSets } from './pattern-sets.tsx';
import { SheetCard } from './sheet-card.tsx';
import { SideSheet } from './side-sheet.tsx';

/** Only the strongest are marked: a mark on half of the pad would mark nothing. */
const BRIDGES = 3;

/** The pad spread out on the table: its colours, its papers, and what belongs together. */
export function PadScreen({ pad }: { pad: string }): VNode {
  return (
    <div class="screen">
      <Once of={pads.at(pad)} again={() => void pads.fresh(pad)} heading={words.stations.pad}>
        {(whole) => <Spread pad={whole} />}
      </Once>
    </div>
  );
}

function Spread({ pad }: { pad: Pad }): VNode {
  const [open, setOpen] = useState<string | null>(null);
  const [lit, setLit] = useState<string | null>(null);
  if (pad.sheets.length === 0) return <NoSheets pad={pad.id} />;
  const litSides = lit === null ? null : new Set(pad.story.find((c) => c.hex === lit)?.sides);
  return (
    <>
      <h1>{pad.name}</h1>
      <ColourStory pad={pad} lit={lit} light={setLit} />
      <Families pad={pad} open={setOpen} />
      <PatternSets pad={pad} open={setOpen} />
      <section aria-labelledby="sheets">
        <h2 id="sheets">{padWords.sheets(pad.sheets.length)}</h2>
        <p class="small">{padWords.numbers}</p>
        <ul class="sheets">
          {pad.sheets.map((sheet) => (
            <li key={sheet.id}>
              <SheetCard
                pad={pad.id}
                sheet={sheet}
                bridge={pad.bridges.slice(0, BRIDGES).includes(sheet.id)}
                lit={litSides}
                open={setOpen}
              />
            </li>
          ))}
        </ul>
      </section>
      {!isPhone() && (
        <>
          <LeftStock pad={pad} />
          <div class="onward">
            <Link to={{ at: 'cards', pad: pad.id, plan: null }} class="button">
              {padWords.onward} <Icon name="next" />
            </Link>
          </div>
        </>
      )}
      {open !== null && <SideSheet key={open} pad={pad} side={open} show={setOpen} />}
    </>
  );
}

function NoSheets({ pad }: { pad: string }): VNode {
  return (
    <div class="empty">
      <h1>{padWords.emptyTitle}</h1>
      <p class="lead">{padWords.empty}</p>
      <Link to={{ at: 'photos', pad, plan: null }} class="button">
        {padWords.toPhotos} <Icon name="next" />
      </Link>
    </div>
  );
}
