import { useState } from 'preact/hooks';
import type { VNode } from 'preact';
import type { Pad, Photo } from '../../server/contract/pads.ts';
import type { Corners, Problem } from '../../server/contract/values.ts';
import { announce } from '../table/announce.tsx';
import { Dialog } from '../table/dialog.tsx';
import { Mishap } from '../table/mishap.tsx';
import { words } from '../words.ts';
import { asProblem } from '../wire/ask.ts';
import { service } from '../wire/service.ts';
import { pads } from '../wire/shelves.ts';
import { CornerHandles } from './corner-handles.tsx';
import { OutlinedPhoto } from './outlined-photo.tsx';
import { sidesOn } from './sides-on.ts';

interface Props {
  readonly pad: Pad;
  readonly photo: Photo;
  readonly close: () => void;
}

/** One photo close up: choose a sheet, put its corners right. */
export function PhotoSheet({ pad, photo, close }: Props): VNode {
  const sides = sidesOn(pad, photo.id);
  const [chosen, setChosen] = useState(sides[0]?.side.id ?? null);
  const [moved, setMoved] = useState<{ side: string; corners: Corners } | null>(null);
  const [problem, setProblem] = useState<Problem | null>(null);
  const [saving, setSaving] = useState(false);
  const faced = sides.find(({ side }) => side.id === chosen);

  async function save(side: string, corners: Corners): Promise<void> {
    setSaving(true);
    setProblem(null);
    try {
      await service.moveCorners(side, corners);
      await pads.fresh(pad.id);
      announce(words.photos.cornersSaved);
    } catch (fault) {
      setProblem(asProblem(fault));
    }
    setMoved(null);
    setSaving(false);
  }

  return (
    <Dialog title={words.photos.corners} close={close} wide>
      <p>{words.photos.cornersHow}</p>
      <div class="corner-field">
        <OutlinedPhoto photo={photo} sides={sides} moved={moved} />
        {faced && (
          <CornerHandles
            photo={photo}
            corners={moved?.side === faced.side.id ? moved.corners : faced.side.corners}
            move={(corners) => setMoved({ side: faced.side.id, corners })}
            settle={(corners) => void save(faced.side.id, corners)}
          />
        )}
      </div>
      {problem && <Mishap problem={problem} />}
      <p role="status" class="small">
        {saving ? words.photos.cornersSaving : words.photos.found(sides.length)}
      </p>
      <ul class="swatch-row" aria-label={words.photos.sheetsOn}>
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
                alt={words.pad.sideName(sheet.label, face)}
                width="84"
                height="84"
              />
            </button>
          </li>
        ))}
      </ul>
    </Dialog>
  );
}
