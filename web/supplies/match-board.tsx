import { useRef, useState } from 'preact/hooks';
import type { VNode } from 'preact';
import type { PaletteColour } from '../../server/contract/pads.ts';
import type { Match, Supply } from '../../server/contract/supplies.ts';
import type { Faced } from '../pad/sides.ts';
import { Icon, type IconName } from '../table/icon.tsx';
import { Once } from '../table/waiting.tsx';
import { matchWords } from '../words/match.ts';
import { matches } from '../wire/shelves.ts';
import { BesidePaper, type Picked } from './beside-paper.tsx';

const marks: Record<Match['verdict'], IconName> = {
  match: 'same',
  close: 'near',
  apart: 'apart',
  'cannot tell': 'unsure',
};

interface Laid {
  readonly match: Match;
  readonly supply: Supply;
}

/**
 * The paper with the spot that she touches, one big verdict beside it, and below them the palette with all that
 * she has laid against it.
 */
export function MatchBoard({
  faced,
  supplies,
  picked: asked,
  pick: ask,
}: {
  faced: Faced;
  supplies: readonly Supply[];
  picked: Picked;
  pick: (picked: Picked) => void;
}): VNode {
  const key = `${faced.side.id}/${supplies.map(({ id }) => id).join()}`;
  const [chosen, setChosen] = useState<string | null>(null);
  const board = useRef<HTMLDivElement>(null);
  const { palette } = faced.side;
  const { colour } = asked;

  function choose(supply: string): void {
    setChosen(supply);
    board.current?.querySelector('.big-match')?.scrollIntoView({ block: 'nearest' });
  }

  function pick(now: Picked): void {
    ask(now);
    setChosen(null);
  }

  return (
    <div class="match-board" ref={board}>
      <Once of={matches.at(key)} again={() => void matches.fresh(key)} about={faced.side.id}>
        {(list) => {
          const laid = laidBy(list, supplies);
          const columns = columnsOf(palette, laid);
          const picked = colour === null ? null : (columns[colour] ?? null);
          const shown = laid.find(({ supply }) => supply.id === chosen) ?? picked?.laid[0] ?? null;
          return (
            <BesidePaper faced={faced} how={matchWords.tapSpot} picked={asked} pick={pick}>
              {shown === null ? (
                picked && <NothingNear colour={picked.colour} />
              ) : colour === null ? (
                <BigPicture laid={shown} />
              ) : (
                <AgainstOne of={`${key}/${colour}`} supply={shown.supply} />
              )}
              <ul class="palette-row" aria-label={matchWords.paletteRow}>
                {columns.map((column, index) => (
                  <li
                    key={index}
                    class={`palette-column${colour === null || colour === index ? '' : ' beside'}`}
                  >
                    <button
                      type="button"
                      class="palette-pick"
                      aria-pressed={colour === index}
                      onClick={() => pick({ colour: index, spot: null })}
                    >
                      <span class="palette-colour" style={{ background: column.colour.hex }} />
                      <span class="small">{column.colour.name}</span>
                    </button>
                    {column.laid.map((one) => (
                      <SupplyButton
                        key={one.supply.id}
                        laid={one}
                        pressed={one === shown}
                        choose={() => choose(one.supply.id)}
                      />
                    ))}
                  </li>
                ))}
              </ul>
            </BesidePaper>
          );
        }}
      </Once>
    </div>
  );
}

/** A supply beside the one colour that she touched, whichever lies nearer to it. */
function AgainstOne({ of: key, supply }: { of: string; supply: Supply }): VNode {
  return (
    <Once of={matches.at(key)} again={() => void matches.fresh(key)}>
      {(list) => {
        const match = list.find((one) => one.supply === supply.id);
        return match === undefined ? <></> : <BigPicture laid={{ match, supply }} />;
      }}
    </Once>
  );
}

function NothingNear({ colour }: { colour: PaletteColour }): VNode {
  return (
    <div class="big-match nothing-near" aria-live="polite">
      <span class="big-half" style={{ background: colour.hex }} />
      <p>
        <strong>{matchWords.nothingNear(colour.name)}</strong>
      </p>
    </div>
  );
}

function laidBy(list: readonly Match[], supplies: readonly Supply[]): Laid[] {
  return list
    .flatMap((match) => {
      const supply = supplies.find(({ id }) => id === match.supply);
      return supply === undefined ? [] : [{ match, supply }];
    })
    .sort((a, b) => a.match.difference - b.match.difference);
}

interface Column {
  readonly colour: PaletteColour;
  readonly laid: readonly Laid[];
}

/** The palette, largest share first, each with the supplies that come nearest to it. */
function columnsOf(palette: readonly PaletteColour[], laid: readonly Laid[]): Column[] {
  return palette.map((colour) => ({
    colour,
    laid: laid.filter(({ match }) => match.nearest.lab.join() === colour.lab.join()),
  }));
}

function BigPicture({ laid: { match, supply } }: { laid: Laid }): VNode {
  const say = matchWords;
  // The reason of these two begins with the direction.
  const said = match.verdict === 'close' || match.verdict === 'apart';
  return (
    <div class="big-match" role="group" aria-label={say.bigPicture(supply.name)}>
      <div class="big-pair" aria-hidden="true">
        <span class="big-half" style={{ background: supply.colour.hex }} />
        <span class="big-half" style={{ background: match.nearest.hex }} />
        <span class="small">{supply.name}</span>
        <span class="small">{say.thePaper}</span>
      </div>
      <div class="big-words" aria-live="polite">
        <p class="big-verdict">
          <Icon name={marks[match.verdict]} /> {say.verdicts[match.verdict]}
        </p>
        <p>
          <strong>{supply.name}</strong> {say.beside(match.nearest.name)}
          {!said && match.direction !== '' && <>: {match.direction}</>}.
        </p>
        <p class="small">{match.reason}</p>
        <details class="small figures">
          <summary>{say.figures}</summary>
          <p>{say.difference(match.difference, match.uncertainty)}</p>
        </details>
        <p class="caution">
          <Icon name="caution" /> {match.caution}
        </p>
      </div>
    </div>
  );
}

function SupplyButton({
  laid: { match, supply },
  pressed,
  choose,
}: {
  laid: Laid;
  pressed: boolean;
  choose: () => void;
}): VNode {
  return (
    <button type="button" class="supply-button" aria-pressed={pressed} onClick={choose}>
      <span class={`chip ${supply.kind}`} style={{ background: supply.colour.hex }} />
      <span class="supply-button-words">
        <span>{supply.name}</span>
        <span class="verdict-word">
          <Icon name={marks[match.verdict]} /> {matchWords.verdicts[match.verdict]}
        </span>
      </span>
    </button>
  );
}
