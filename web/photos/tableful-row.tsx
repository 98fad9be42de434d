import { useState } from 'preact/hooks';
import type { VNode } from 'preact';
import type { Pad, Photo } from '../../server/contract/pads.ts';
import type { Problem } from '../../server/contract/values.ts';
import { announce } from '../table/announce.tsx';
import { Icon } from '../table/icon.tsx';
import { Mishap } from '../table/mishap.tsx';
import { photosWords } from '../words/photos.ts';
import { asProblem } from '../wire/ask.ts';
import { isPhone } from '../wire/is-phone.ts';
import { pads } from '../wire/shelves.ts';
import { FileButton } from './file-button.tsx';
import { OutlinedPhoto } from './outlined-photo.tsx';
import { PhotoSheet } from './photo-sheet.tsx';
import { enqueue } from './queue.ts';
import { SendingCard } from './sending-card.tsx';
import type { Sending } from './sending.ts';
import { shownFace } from './shown-face.ts';
import { sidesOn } from './sides-on.ts';
import { sheetsOn, swapFaces } from './swap-faces.ts';
import type { Face, Tableful } from './tablefuls.ts';

interface Props {
  readonly pad: Pad;
  readonly tableful: Tableful;
  readonly number: number;
  readonly sendings: readonly Sending[];
}

/** One tableful: the photo of its fronts beside the photo of its backs. */
export function TablefulRow({ pad, tableful, number, sendings }: Props): VNode {
  const [problem, setProblem] = useState<Problem | null>(null);
  const [swapping, setSwapping] = useState(false);

  async function swap(): Promise<void> {
    setSwapping(true);
    setProblem(null);
    try {
      await swapFaces(sheetsOn(pad, tableful.arrangement));
      announce(photosWords.swapped);
    } catch (fault) {
      setProblem(asProblem(fault));
    }
    await pads.fresh(pad.id);
    setSwapping(false);
  }

  return (
    <section class="tableful" aria-label={photosWords.tableful(number)}>
      <div class="heading-line">
        <h2>{photosWords.tableful(number)}</h2>
        {(tableful.front ?? tableful.back) && !isPhone() && (
          <button
            type="button"
            class="button quiet"
            disabled={swapping || sendings.length > 0}
            onClick={() => void swap()}
          >
            <Icon name="turn" /> {photosWords.swap}
          </button>
        )}
      </div>
      {problem && <Mishap problem={problem} />}
      <div class="wells">
        {(['front', 'back'] as const).map((face) => (
          <Well
            key={face}
            pad={pad}
            face={face}
            arrangement={tableful.arrangement}
            photo={tableful[face]}
            sendings={sendings.filter(({ berth }) => berth.side === face)}
          />
        ))}
      </div>
    </section>
  );
}

interface WellProps {
  readonly pad: Pad;
  readonly face: Face;
  readonly arrangement: string;
  readonly photo: Photo | null;
  readonly sendings: readonly Sending[];
}

function Well({ pad, face, arrangement, photo, sendings }: WellProps): VNode {
  const [open, setOpen] = useState(false);
  return (
    <div class="well">
      <h3>{photosWords.faces[face]}</h3>
      {photo && <Laid pad={pad} photo={photo} open={() => setOpen(true)} />}
      {sendings.map((sending) => (
        <SendingCard key={sending.id} sending={sending} />
      ))}
      {!photo && sendings.length === 0 && (
        <div class="well-empty">
          <p>{photosWords.missing[face]}</p>
          <FileButton
            icon="photos"
            take={(files) => enqueue(pad.id, files.slice(0, 1), [{ arrangement, side: face }])}
          >
            {photosWords.add[face]}
          </FileButton>
        </div>
      )}
      {open && photo && <PhotoSheet pad={pad} photo={photo} close={() => setOpen(false)} />}
    </div>
  );
}

function Laid({ pad, photo, open }: { pad: Pad; photo: Photo; open: () => void }): VNode {
  const sides = sidesOn(pad, photo.id);
  return (
    <>
      {isPhone() ? (
        <OutlinedPhoto photo={photo} sides={sides} />
      ) : (
        <button type="button" class="laid" onClick={open}>
          <OutlinedPhoto photo={photo} sides={sides} />
          <span class="unseen">
            {photosWords.openPhoto(photosWords.faces[shownFace(pad, photo)], sides.length)}
          </span>
        </button>
      )}
      <p class="small">
        <strong>{photosWords.found(sides.length)}</strong> {photosWords.whites[photo.white.kind]}
      </p>
      {photo.notes.map((note) => (
        <p key={note} class="small note">
          {note}
        </p>
      ))}
    </>
  );
}
