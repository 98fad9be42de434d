import { useState } from 'preact/hooks';
import type { VNode } from 'preact';
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
  const tied = all.find((one) => one.id === photo?.tiedTo)?.id;
  const of = chosen ?? tied ?? pad ?? all[0]?.id ?? null;
  const photos = of === null ? [] : pads.at(of).value.value?.photos;
  if (photo === undefined) return null;

  async function show(places: readonly Place[]): Promise<Tie | null> {
    if (of === null) return null;
    setSaving(true);
    setProblem(null);
    try {
      await service.tieSupplies(id, { pad: of, chips: places.map(([x, y]) => [x, y]) });
      await Promise.all([supplies.fresh('all'), supplyPhotos.fresh('all')]);
      announce(say.saved);
      return 'tied';
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
      {problem && <Mishap problem={problem} />}
    </Dialog>
  );
}
