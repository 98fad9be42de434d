import type { ComponentChildren, VNode } from 'preact';
import type { Faced } from '../pad/sides.ts';
import { matchWords } from '../words/match.ts';
import { TappedSwatch, type Spot } from './tapped-swatch.tsx';

/** The colour of a paper that is asked of, and where it was touched. */
export interface Picked {
  /** The place in the palette; null for the whole paper. */
  readonly colour: number | null;
  readonly spot: Spot | null;
}

export const WHOLE_PAPER: Picked = { colour: null, spot: null };

interface Props {
  readonly faced: Faced;
  /** What a touch on it does. */
  readonly how: string;
  readonly picked: Picked;
  readonly pick: (picked: Picked) => void;
  readonly children: ComponentChildren;
}

/** The paper itself, to be touched, and the answers beside it. */
export function BesidePaper({ faced, how, picked, pick, children }: Props): VNode {
  const { palette, swatch } = faced.side;
  return (
    <div
      class="check-spot"
      onKeyDown={(event) => {
        if (event.key === 'Escape' && picked.colour !== null) pick(WHOLE_PAPER);
      }}
    >
      <div class="check-paper">
        <TappedSwatch
          swatch={swatch}
          palette={palette}
          spot={picked.spot}
          pick={(colour, spot) => pick({ colour, spot })}
        />
        {picked.colour === null ? (
          <p class="small">{how}</p>
        ) : (
          <button type="button" class="button quiet" onClick={() => pick(WHOLE_PAPER)}>
            {matchWords.wholePaper}
          </button>
        )}
      </div>
      <div class="check-answers">{children}</div>
    </div>
  );
}
