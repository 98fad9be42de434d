import type { VNode } from 'preact';
import type { Pad } from '../../server/contract/pads.ts';
import { Icon } from '../table/icon.tsx';
import { Link } from '../table/link.tsx';
import { Once } from '../table/waiting.tsx';
import { photosWords } from '../words/photos.ts';
import { pads } from '../wire/shelves.ts';
import { HowToLay } from './how-to-lay.tsx';
import { Pairs } from './pairs.tsx';
import { PhotoIntake } from './photo-intake.tsx';
import { holdsPlace, sendings } from './sending.ts';
import { TablefulRow } from './tableful-row.tsx';
import { UnderwayLine } from './underway.tsx';
import { tablefulsOf } from './tablefuls.ts';

/** Bringing the papers in: photograph the fronts, turn them over, photograph the backs. */
export function PhotosScreen({ pad }: { pad: string }): VNode {
  return (
    <div class="screen">
      <h1>{photosWords.heading}</h1>
      <Once of={pads.at(pad)} again={() => void pads.fresh(pad)}>
        {(whole) => <Intake pad={whole} />}
      </Once>
    </div>
  );
}

function Intake({ pad }: { pad: Pad }): VNode {
  const mine = sendings.value.filter((one) => one.pad === pad.id && holdsPlace(one));
  const tablefuls = tablefulsOf(
    pad,
    mine.map(({ berth }) => berth.arrangement),
  );
  // How to lay them comes first only until she has done it.
  const begun = pad.photos.length > 0 || mine.length > 0;
  return (
    <>
      {!begun && <HowToLay open />}
      <UnderwayLine sendings={mine} />
      <PhotoIntake pad={pad} />
      {tablefuls.map((tableful, index) => (
        <TablefulRow
          key={tableful.arrangement}
          pad={pad}
          tableful={tableful}
          number={index + 1}
          sendings={mine.filter(({ berth }) => berth.arrangement === tableful.arrangement)}
        />
      ))}
      {begun && <HowToLay open={false} />}
      {pad.sheets.length > 0 && (
        <>
          <Pairs pad={pad} />
          <div class="onward">
            <Link to={{ at: 'pad', pad: pad.id, plan: null }} class="button">
              {photosWords.onward} <Icon name="next" />
            </Link>
          </div>
        </>
      )}
    </>
  );
}
