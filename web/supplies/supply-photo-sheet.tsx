import { useState } from 'preact/hooks';
import type { VNode } from 'preact';
import type { SuppliesTie } from '../../server/contract/supplies.ts';
import type { Problem } from '../../server/contract/values.ts';
import { ScrapTouch, type Place, type Tie } from '../photos/scrap-touch.tsx';
import { announce } from '../table/announce.tsx';
import { Dialog } from '../table/dialog.tsx';
import { Mishap } from '../table/mishap.tsx';
import { photosWords } from '../words/photos.ts';
import { suppliesWords } from '../words/supplies.ts';
import { asProblem } from '../wire/ask.ts';
import { service } from '../wire/service.ts';
import { padList, pads, supplies, supplyPhotos } from '../wire/shelves.ts';

interface Props {
  /** The pad on the table, whose scraps they most likely are. */
  readonly pad: string | null;
  /** The photo of supplies. */
  readonly id: string;
  readonly close: () => void;
}

/** A photo of supplies close up: the scraps that lie in it too are touched, and it is tied to a pad's photos. */
export function SupplyPhotoSheet({ pad, id, close }: Props): VNode | null {
  const say = suppliesWords.photos;
  const photo = (supplyPhotos.at('all').value.value ?? []).find((one) => one.id === id);
  const all = padList.at('all').value.value ?? [];
  const [chosen, setChosen] = useState<string | null>(null);
  const [saving, setSaving] = useState(false);
  const [problem, setProblem] = useState<Problem | null>(null);
  /** What was said of the photo when it was read again. */
  const [notes, setNotes] = useState<readonly string[]>([]);
  const tied = all.find((one) => one.id === photo?.tiedTo)?.id;
  const of = chosen ?? tied ?? pad ?? all[0]?.id ?? null;
  const photos = of === null ? [] : pads.at(of).value.value?.photos;
  if (photo === undefined) return null;

  async function show(places: readonly Place[]): Promise<Tie | null> {
    return of === null
      ? null
      : readBy({ pad: of, chips: places.map(([x, y]) => [x, y]) }, 'tied', say.saved);
  }

  async function readBy(tie: SuppliesTie, then: Tie, told: string): Promise<Tie | null> {
    setSaving(true);
    setProblem(null);
    setNotes([]);
    try {
      setNotes((await service.tieSupplies(id, tie)).notes);
      await Promise.all([supplies.fresh('all'), supplyPhotos.fresh('all')]);
      announce(told);
      return then;
    } catch (fault) {
      setProblem(asProblem(fault));
      return null;
    } finally {
      setSaving(false);
    }
  }

  return (
    <Dialog title={say.title} close={close} wide>
      <p>
        {say.how} <span class="for-keys">{photosWords.scrapsKeys}</span>
      </p>
      {all.length === 0 && <p class="caution">{say.noPad}</p>}
      {all.length > 0 && (
        <label class="field">
          <span>{say.which}</span>
          <select value={of ?? ''} onChange={(event) => setChosen(event.currentTarget.value)}>
            {all.map(({ id: one, name }) => (
              <option key={one} value={one}>
                {name}
              </option>
            ))}
          </select>
        </label>
      )}
      {all.length > 0 && photos?.every(({ chips }) => chips.tie === 'none') && (
        <p class="caution">{say.noScraps}</p>
      )}
      <ScrapTouch photo={photo} tied={say.tie} saving={saving} show={show}>
        <span class="outlined">
          <img src={photo.picture} alt="" width={photo.width} height={photo.height} />
          <svg viewBox={`0 0 ${photo.width} ${photo.height}`} aria-hidden="true">
            {photo.chips.scraps.map(({ corners }) => (
              <polygon
                key={corners.join(' ')}
                class="outline white"
                points={corners.map((corner) => corner.join(',')).join(' ')}
              />
            ))}
          </svg>
        </span>
      </ScrapTouch>
      {notes.map((note) => (
        <p key={note} class="caution" role="status">
          {note}
        </p>
      ))}
      {photo.chips.tie === 'tied' && (
        <div class="ends">
          {photo.aside.length > 0 && <p>{say.aside(photo.aside)}</p>}
          <button
            type="button"
            class="button quiet"
            disabled={saving}
            onClick={() => void readBy({ chips: [] }, 'none', say.untied)}
          >
            {say.untie}
          </button>
        </div>
      )}
      {problem && <Mishap problem={problem} />}
    </Dialog>
  );
}
