import { useState } from 'preact/hooks';
import type { VNode } from 'preact';
import type { Supply } from '../../server/contract/supplies.ts';
import { Icon } from '../table/icon.tsx';
import { Once } from '../table/waiting.tsx';
import { suppliesWords } from '../words/supplies.ts';
import { supplies } from '../wire/shelves.ts';
import { besidePad } from './beside.ts';
import { MatchCheck } from './match-check.tsx';
import { NewSupplySheet } from './new-supply-sheet.tsx';
import { PlanSupplies } from './plan-supplies.tsx';
import { SupplyCard } from './supply-card.tsx';
import { SupplyListButtons } from './supply-list.tsx';
import { SupplyPhotos } from './supply-photos.tsx';
import { SupplyPhotoSheet } from './supply-photo-sheet.tsx';
import { Twins } from './twins.tsx';

/** Her cardstock and inks, and how they match the papers. */
export function SuppliesScreen({ pad }: { pad: string | null }): VNode {
  const [adding, setAdding] = useState(false);
  /** The photo on which scraps are touched. */
  const [tying, setTying] = useState<string | null>(null);
  return (
    <div class="screen">
      <div class="heading-line">
        <h1>{suppliesWords.heading}</h1>
        <button type="button" class="button" onClick={() => setAdding(true)}>
          <Icon name="plus" /> {suppliesWords.add}
        </button>
      </div>
      <Once of={supplies.at('all')} again={() => void supplies.fresh('all')}>
        {(all) => {
          const list = besidePad(all, pad);
          return (
            <>
              {list.length === 0 && <p class="lead">{suppliesWords.none}</p>}
              {list.length > 1 && <Twins supplies={list} />}
              {list.length > 0 && <MatchCheck pad={pad} supplies={all} />}
              {pad !== null && <PlanSupplies pad={pad} supplies={list} />}
              <SupplyList title={suppliesWords.cardstock} list={list.filter(isCardstock)} />
              <SupplyList
                title={suppliesWords.inks}
                list={list.filter((one) => !isCardstock(one))}
              />
              <SupplyPhotos supplies={list} open={setTying} />
              <SupplyListButtons list={list} />
            </>
          );
        }}
      </Once>
      {adding && (
        <NewSupplySheet
          pad={pad}
          tie={(photo) => {
            setAdding(false);
            setTying(photo);
          }}
          close={() => setAdding(false)}
        />
      )}
      {tying !== null && <SupplyPhotoSheet pad={pad} id={tying} close={() => setTying(null)} />}
    </div>
  );
}

function isCardstock({ kind }: Supply): boolean {
  return kind === 'cardstock';
}

function SupplyList({ title, list }: { title: string; list: readonly Supply[] }): VNode | null {
  if (list.length === 0) return null;
  return (
    <section aria-label={title}>
      <h2>{title}</h2>
      <ul class="supplies">
        {list.map((supply) => (
          <li key={supply.id}>
            <SupplyCard supply={supply} />
          </li>
        ))}
      </ul>
    </section>
  );
}
