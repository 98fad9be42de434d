import { useState } from 'preact/hooks';
import type { VNode } from 'preact';
import type { Supplies, Supply } from '../../server/contract/supplies.ts';
import type { Problem } from '../../server/contract/values.ts';
import { Icon } from '../table/icon.tsx';
import { Mishap } from '../table/mishap.tsx';
import { suppliesWords } from '../words/supplies.ts';
import { asProblem } from '../wire/ask.ts';
import { service } from '../wire/service.ts';
import { supplies as shelf } from '../wire/shelves.ts';
import { isCalledByColour } from './called-by-colour.ts';

/** What was found in a photo of supplies: numbered where it lies, and named in place. */
export function FoundSupplies({
  found: { supplies, notes, picture },
  tie,
  done,
}: {
  found: Supplies;
  /** Goes on to the scraps that lie in the photo too. */
  tie: (photo: string) => void;
  done: () => void;
}): VNode {
  const photo = supplies[0]?.photo ?? null;
  const say = suppliesWords.found;
  return (
    <div class="found-supplies">
      <p>{say.lead(supplies.length)}</p>
      {notes.map((note) => (
        <p key={note} class="caution">
          <Icon name="caution" /> {note}
        </p>
      ))}
      {picture && (
        <div class="found-photo">
          <img
            src={picture.address}
            alt={say.photo}
            width={picture.width}
            height={picture.height}
          />
          {supplies.map((supply, index) => (
            <span key={supply.id} class="found-number" style={placeOf(supply, picture)}>
              {index + 1}
            </span>
          ))}
        </div>
      )}
      <ol class="found-names">
        {supplies.map((supply, index) => (
          <li key={supply.id}>
            <FoundName supply={supply} number={index + 1} />
          </li>
        ))}
      </ol>
      <div class="ends">
        <button type="button" class="button" onClick={done}>
          {say.done}
        </button>
        {photo !== null && (
          <button type="button" class="button quiet" onClick={() => tie(photo)}>
            <Icon name="white" /> {suppliesWords.photos.scraps}
          </button>
        )}
      </div>
      {photo !== null && <p class="small">{suppliesWords.photos.scrapsWhy}</p>}
    </div>
  );
}

/** The middle of a square or smear, in parts of the photo. */
function placeOf(
  { corners }: Supply,
  { width, height }: NonNullable<Supplies['picture']>,
): { left: string; top: string } | { display: string } {
  if (corners === undefined) return { display: 'none' };
  const mean = (axis: 0 | 1): number => corners.reduce((sum, one) => sum + one[axis] / 4, 0);
  return { left: `${(100 * mean(0)) / width}%`, top: `${(100 * mean(1)) / height}%` };
}

function FoundName({ supply, number }: { supply: Supply; number: number }): VNode {
  const [problem, setProblem] = useState<Problem | null>(null);
  const say = suppliesWords;

  async function rename(given: string): Promise<void> {
    const name = given.trim();
    if (name === '' || name === supply.name) return;
    setProblem(null);
    try {
      await service.changeSupply(supply.id, { name });
      await shelf.fresh('all');
    } catch (fault) {
      setProblem(asProblem(fault));
    }
  }

  return (
    <>
      <label class="found-name">
        <span class="found-number still">{number}</span>
        <span class={`chip big ${supply.kind}`} style={{ background: supply.colour.hex }} />
        <input
          class="name-in-place"
          aria-label={say.found.nameOf(number)}
          defaultValue={supply.name}
          maxLength={80}
          onChange={(event) => void rename(event.currentTarget.value)}
        />
      </label>
      {supply.glossy && <span class="small">{say.glossy}</span>}
      {!supply.glossy && !isCalledByColour(supply) && (
        <span class="small">{supply.colour.name}</span>
      )}
      {problem && <Mishap problem={problem} />}
    </>
  );
}
