import { useState } from 'preact/hooks';
import type { VNode } from 'preact';
import type { Pad, Sheet } from '../../server/contract/pads.ts';
import type { Problem } from '../../server/contract/values.ts';
import { sidesOf } from '../pad/sides.ts';
import { Dialog } from '../table/dialog.tsx';
import { Icon } from '../table/icon.tsx';
import { Mishap } from '../table/mishap.tsx';
import { swatchAt } from '../pad/swatch-at.ts';
import { padWords } from '../words/pad.ts';
import { photosWords } from '../words/photos.ts';
import { asProblem } from '../wire/ask.ts';
import { isPhone } from '../wire/is-phone.ts';
import { service } from '../wire/service.ts';
import { pads } from '../wire/shelves.ts';

/** Fronts and backs as pairs; a wrong back is changed by choosing the right one. */
export function Pairs({ pad }: { pad: Pad }): VNode {
  const [open, setOpen] = useState<Sheet | null>(null);
  return (
    <section aria-labelledby="pairs">
      <h2 id="pairs">{photosWords.pairs(pad.sheets.length)}</h2>
      {!isPhone() && <p>{photosWords.pairsHow}</p>}
      <ul class="pairs">
        {pad.sheets.map((sheet) => (
          <li key={sheet.id}>
            {isPhone() ? (
              <div class="pair-button">
                <Pair sheet={sheet} />
              </div>
            ) : (
              <button type="button" class="pair-button" onClick={() => setOpen(sheet)}>
                <Pair sheet={sheet} />
                <span class="unseen">{photosWords.changeBack}</span>
              </button>
            )}
          </li>
        ))}
      </ul>
      {open && <BackChooser pad={pad} sheet={open} close={() => setOpen(null)} />}
    </section>
  );
}

function Pair({ sheet: { front, back, label } }: { sheet: Sheet }): VNode {
  return (
    <>
      <PairFace src={front?.swatch} />
      <Icon name="turn" />
      <PairFace src={back?.swatch} />
      <span>{label}</span>
    </>
  );
}

function PairFace({ src }: { src: string | undefined }): VNode {
  if (src === undefined) return <span class="pair-missing">?</span>;
  return <img src={swatchAt(src, 64)} alt="" loading="lazy" width="72" height="72" />;
}

interface ChooserProps {
  readonly pad: Pad;
  readonly sheet: Sheet;
  readonly close: () => void;
}

function BackChooser({ pad, sheet, close }: ChooserProps): VNode {
  const [problem, setProblem] = useState<Problem | null>(null);

  async function choose(back: string | null): Promise<void> {
    try {
      await service.changeSheet(sheet.id, { back });
      await pads.fresh(pad.id);
      close();
    } catch (fault) {
      setProblem(asProblem(fault));
    }
  }

  return (
    <Dialog title={photosWords.backOf(sheet.label)} close={close} wide>
      {problem && <Mishap problem={problem} />}
      <ul class="swatch-row">
        {sidesOf(pad)
          .filter(({ side }) => side.id !== sheet.front?.id)
          .map(({ side, sheet: of, face }) => (
            <li key={side.id}>
              <button
                type="button"
                class="swatch-button"
                aria-pressed={side.id === sheet.back?.id}
                onClick={() => void choose(side.id)}
              >
                <img
                  src={swatchAt(side.swatch, 84)}
                  alt={padWords.sideName(of.label, face)}
                  width="96"
                  height="96"
                />
              </button>
            </li>
          ))}
      </ul>
      <div class="ends">
        <button type="button" class="button quiet" onClick={() => void choose(null)}>
          {photosWords.noBack}
        </button>
      </div>
    </Dialog>
  );
}
