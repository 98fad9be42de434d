import { signal } from '@preact/signals';
import { useState } from 'preact/hooks';
import type { VNode } from 'preact';
import type { Supplies } from '../../server/contract/supplies.ts';
import type { Problem } from '../../server/contract/values.ts';
import { announce } from '../table/announce.tsx';
import { ChoiceRow } from '../table/choice-row.tsx';
import { Dialog } from '../table/dialog.tsx';
import { Mishap } from '../table/mishap.tsx';
import { suppliesWords } from '../words/supplies.ts';
import { asProblem } from '../wire/ask.ts';
import { service } from '../wire/service.ts';
import { colourNames, pads, supplies, supplyPhotos } from '../wire/shelves.ts';
import { FoundSupplies } from './found-supplies.tsx';
import { TouchPhoto, type TouchedPlace } from './touch-photo.tsx';
import { typedColour, type TypedColour } from './typed-colour.ts';
import { TypedField } from './typed-field.tsx';

const kinds = ['cardstock', 'ink'] as const;
const ways = ['photo', 'touch', 'typed'] as const;
type Way = (typeof ways)[number];
const kind = signal<(typeof kinds)[number]>('cardstock');
const way = signal<Way>('photo');

/** Adds cardstock or ink: many from one photo, or one by its colour. */
export function NewSupplySheet({
  pad,
  tie,
  close,
}: {
  /** The pad on whose photos a place may be touched. */
  pad: string | null;
  /** Goes on to the scraps that lie in a photo of supplies. */
  tie: (photo: string) => void;
  close: () => void;
}): VNode {
  const [name, setName] = useState('');
  const [colour, setColour] = useState('');
  const [photo, setPhoto] = useState<File | null>(null);
  const [touched, setTouched] = useState<TouchedPlace | null>(null);
  const [problem, setProblem] = useState<Problem | null>(null);
  const [sending, setSending] = useState(false);
  const [found, setFound] = useState<Supplies | null>(null);
  const say = suppliesWords;
  const names = colourNames.at('all').value.value?.names ?? [];
  const typed = typedColour(colour, names);
  const photos = [
    ...(pad === null ? [] : (pads.at(pad).value.value?.photos ?? [])),
    ...(supplyPhotos.at('all').value.value ?? []),
  ];
  const choices = ways.filter((one) => one !== 'touch' || photos.length > 0);
  const chosen = choices.includes(way.value) ? way.value : 'photo';
  const missing = { photo: false, touch: touched === null, typed: typed === null }[chosen];

  async function add(event: Event): Promise<void> {
    event.preventDefault();
    setSending(true);
    setProblem(null);
    try {
      const answer = await send(chosen, name, { photo, touched, typed });
      await supplies.fresh('all');
      void supplyPhotos.fresh('all');
      announce(say.added(answer.supplies.length));
      if (answer.picture === undefined) close();
      else setFound(answer);
    } catch (fault) {
      setProblem(asProblem(fault));
      setSending(false);
    }
  }

  if (found !== null)
    return (
      <Dialog title={say.found.title} close={close}>
        <FoundSupplies found={found} tie={tie} done={close} />
      </Dialog>
    );
  return (
    <Dialog title={say.add} close={close}>
      <form onSubmit={(event) => void add(event)}>
        <ChoiceRow legend={say.kind} name="kind" of={kind} choices={kinds} words={say.kinds} />
        <ChoiceRow legend={say.way} name="way" of={way} choices={choices} words={say.ways} />
        {chosen === 'touch' && <TouchPhoto photos={photos} touched={touched} touch={setTouched} />}
        {chosen === 'photo' && (
          <>
            <p>{say.photoHow}</p>
            <label class="field">
              <span>{say.photo}</span>
              <input
                type="file"
                name="photo"
                required
                accept="image/*,.heic,.heif"
                onChange={(event) => setPhoto(event.currentTarget.files?.[0] ?? null)}
              />
            </label>
          </>
        )}
        {chosen === 'typed' && <TypedField value={colour} names={names} type={setColour} />}
        <label class="field">
          <span>{say.name}</span>
          <input
            name="name"
            required={chosen !== 'photo'}
            maxLength={80}
            value={name}
            autoComplete="off"
            onInput={(event) => setName(event.currentTarget.value)}
          />
        </label>
        {chosen === 'photo' && <p class="small">{say.nameFree}</p>}
        {problem && <Mishap problem={problem} />}
        <div class="ends">
          <button type="submit" class="button" disabled={sending || missing}>
            {sending ? say.reading : say.lay}
          </button>
        </div>
      </form>
    </Dialog>
  );
}

interface Given {
  readonly photo: File | null;
  readonly touched: TouchedPlace | null;
  readonly typed: TypedColour | null;
}

function send(
  by: Way,
  given: string,
  { photo, touched, typed }: Given,
): ReturnType<typeof service.addSupply> {
  const name = given.trim();
  if (by === 'typed' && typed) {
    return service.addSupply({ kind: kind.value, name, colour: typed.colour });
  }
  if (by === 'touch' && touched) {
    return service.touchSupply(touched.photo, { kind: kind.value, name, at: touched.at });
  }
  const form = new FormData();
  form.append('kind', kind.value);
  if (name !== '') form.append('name', name);
  if (photo) form.append('photo', photo);
  return service.photographSupplies(form);
}
