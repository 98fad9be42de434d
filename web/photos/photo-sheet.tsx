import { useRef, useState } from 'preact/hooks';
import type { VNode } from 'preact';
import type { Pad, Photo } from '../../server/contract/pads.ts';
import type { Corners, Problem } from '../../server/contract/values.ts';
import { announce } from '../table/announce.tsx';
import { Dialog } from '../table/dialog.tsx';
import { Icon } from '../table/icon.tsx';
import { Mishap } from '../table/mishap.tsx';
import { padWords } from '../words/pad.ts';
import { photosWords } from '../words/photos.ts';
import { asProblem } from '../wire/ask.ts';
import { service } from '../wire/service.ts';
import { padList, pads } from '../wire/shelves.ts';
import { CornerHandles } from './corner-handles.tsx';
import { OutlinedPhoto } from './outlined-photo.tsx';
import { ScrapTouch, type Place, type Tie } from './scrap-touch.tsx';
import { sidesOn } from './sides-on.ts';
import { sheetsOn, swapFaces } from './swap-faces.ts';
import { WhiteCardTap } from './white-card.tsx';
import { within } from './within.ts';

interface Props {
  readonly pad: Pad;
  readonly photo: Photo;
  readonly close: () => void;
}

/** The key of the white card among the things on a photo that have corners. */
const WHITE = 'white';
/** That of the scraps, which are touched and have no corners to drag. */
const SCRAPS = 'scraps';

/** What is done to the photo, how, and how by keyboard. */
function howTo(chosen: string): { title: string; how: string; keys: string } {
  const { corners, cornersHow, cornersKeys, scraps, scrapsHow, scrapsKeys, whiteCard, whiteHow } =
    photosWords;
  if (chosen === SCRAPS) return { title: scraps, how: scrapsHow, keys: scrapsKeys };
  if (chosen === WHITE) return { title: whiteCard, how: whiteHow, keys: cornersKeys };
  return { title: corners, how: cornersHow, keys: cornersKeys };
}

/** One photo close up: put the corners of a sheet right, show where the white card or the scraps lie, take it away. */
export function PhotoSheet({ pad, photo, close }: Props): VNode {
  const sides = sidesOn(pad, photo.id);
  const [chosen, setChosen] = useState(sides[0]?.side.id ?? WHITE);
  const [moved, setMoved] = useState<{ of: string; corners: Corners } | null>(null);
  const [problem, setProblem] = useState<Problem | null>(null);
  const [saving, setSaving] = useState(false);
  /** What is being saved, one after the other, and how many were begun. */
  const saves = useRef<Promise<unknown>>(Promise.resolve());
  const begun = useRef(0);
  const stand =
    chosen === WHITE
      ? photo.white.corners
      : (sides.find(({ side }) => side.id === chosen)?.side.corners ?? null);
  const corners = moved?.of === chosen ? moved.corners : stand;
  const { title, how, keys } = howTo(chosen);

  async function change(act: () => Promise<unknown>, said: string | (() => string)): Promise<void> {
    setSaving(true);
    setProblem(null);
    begun.current += 1;
    const mine = begun.current;
    const before = saves.current;
    const saved = (async () => {
      await before;
      try {
        await act();
        await pads.fresh(pad.id);
        announce(typeof said === 'string' ? said : said());
      } catch (fault) {
        setProblem(asProblem(fault));
      }
      // What she moved since is on its way still, and stays as she has put it.
      if (mine !== begun.current) return;
      setMoved(null);
      setSaving(false);
    })();
    saves.current = saved;
    await saved;
  }

  function move(to: Corners): void {
    setMoved({ of: chosen, corners: to });
  }

  function settle(to: Corners): void {
    move(to);
    void change(
      () => (chosen === WHITE ? service.showWhite(photo.id, to) : service.moveCorners(chosen, to)),
      photosWords.cornersSaved,
    );
  }

  /** The sheet or the white card under a touch is the one whose corners are put right. */
  function touch(x: number, y: number): void {
    const sheet = sides.find(({ side }) => within(side.corners, x, y));
    const { corners: white } = photo.white;
    if (sheet) setChosen(sheet.side.id);
    else if (white && within(white, x, y)) setChosen(WHITE);
  }

  /** Gives how the photo is tied then; null when it could not be read. */
  async function showScraps(places: readonly Place[]): Promise<Tie | null> {
    let tie: Tie | null = null;
    const touched = async (): Promise<void> => {
      tie = (await service.showChips(photo.id, places)).photo.chips.tie;
    };
    await change(touched, () => photosWords.scrapsSaved[tie ?? 'none']);
    return tie;
  }

  /** With the photo of the sheets turned over, if it is there: the two change places. */
  async function turn(): Promise<void> {
    await change(() => swapFaces(sheetsOn(pad, photo.arrangement)), photosWords.swapped);
    close();
  }

  async function takeAway(): Promise<void> {
    await change(() => service.removePhoto(photo.id), photosWords.photoGone);
    void padList.fresh('all');
    close();
  }

  return (
    <Dialog title={title} close={close} wide>
      <p>
        {how} <span class="for-keys">{keys}</span>
      </p>
      {chosen === SCRAPS ? (
        <ScrapTouch photo={photo} saving={saving} show={showScraps}>
          <OutlinedPhoto photo={photo} sides={sides} />
        </ScrapTouch>
      ) : (
        <div class={saving ? 'corner-field busy' : 'corner-field'} aria-busy={saving}>
          <OutlinedPhoto photo={photo} sides={sides} moved={moved} />
          {corners ? (
            <CornerHandles
              photo={photo}
              corners={corners}
              move={move}
              settle={settle}
              touch={touch}
            />
          ) : (
            <WhiteCardTap photo={photo} place={settle} />
          )}
        </div>
      )}
      {problem && <Mishap problem={problem} />}
      <p role="status" class="small">
        {saving ? photosWords.cornersSaving : photosWords.found(sides.length)}
      </p>
      <ul class="swatch-row" aria-label={photosWords.sheetsOn}>
        {sides.map(({ side, sheet, face }) => (
          <li key={side.id}>
            <button
              type="button"
              class="swatch-button"
              aria-pressed={side.id === chosen}
              onClick={() => setChosen(side.id)}
            >
              <img
                src={side.swatch}
                alt={padWords.sideName(sheet.label, face)}
                width="84"
                height="84"
              />
            </button>
          </li>
        ))}
        <li>
          <button
            type="button"
            class="supply-button"
            aria-pressed={chosen === WHITE}
            onClick={() => setChosen(WHITE)}
          >
            <Icon name="white" /> {photosWords.whiteCard}
          </button>
        </li>
        <li>
          <button
            type="button"
            class="supply-button"
            aria-pressed={chosen === SCRAPS}
            onClick={() => setChosen(SCRAPS)}
          >
            <Icon name="white" /> {photosWords.scraps}
          </button>
        </li>
      </ul>
      <div class="ends">
        <button type="button" class="button quiet" disabled={saving} onClick={() => void turn()}>
          <Icon name="turn" /> {photosWords.otherFace}
        </button>
        <button type="button" class="button quiet" onClick={() => void takeAway()}>
          <Icon name="close" /> {photosWords.removePhoto}
        </button>
      </div>
    </Dialog>
  );
}
