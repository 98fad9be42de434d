import { useRef, useState } from 'preact/hooks';
import type { VNode } from 'preact';
import type { PaletteColour } from '../../server/contract/pads.ts';
import type { Match, Supply } from '../../server/contract/supplies.ts';
import type { Faced } from '../pad/sides.ts';
import { Icon, type IconName } from '../table/icon.tsx';
import { Mishap } from '../table/mishap.tsx';
import { useHeld } from '../table/held.ts';
import { Coming } from '../table/waiting.tsx';
import { matchWords } from '../words/match.ts';
import { matches } from '../wire/shelves.ts';
import { BesidePaper, WHOLE_PAPER, type Picked } from './beside-paper.tsx';

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
 * she has laid against it. Of the whole paper each lies at the colour that it is nearest to; once she has touched a colour,
 * all are laid against that one.
 */
export function MatchBoard({
  faced,
  supplies,
  picked,
  pick: ask,
}: {
  faced: Faced;
  supplies: readonly Supply[];
  picked: Picked;
  pick: (picked: Picked) => void;
}): VNode {
  const { colour } = picked;
  const ids = supplies.map(({ id }) => id).join();
  const key = `${faced.side.id}/${ids}${colour === null ? '' : `/${colour}`}`;
  const { value, problem, waiting } = matches.at(key).value;
  // Until another colour has its answer, the one before stays, as what it is: an answer for that colour.
  const answer = useHeld(faced.side.id, value && { list: value, colour });
  const [chosen, setChosen] = useState<string | null>(null);
  const board = useRef<HTMLDivElement>(null);

  function choose(supply: string): void {
    setChosen(supply);
    board.current?.querySelector('.big-match')?.scrollIntoView({ block: 'nearest' });
  }

  function pick(now: Picked): void {
    ask(now);
    setChosen(null);
  }

  const laid = answer === null ? [] : laidBy(answer.list, supplies);
  const beside = answer?.colour ?? null;
  const hers = laid.find(({ supply }) => supply.id === chosen);
  const shown = hers ?? (beside === null ? undefined : laid[0]);
  const buttons = (some: readonly Laid[]): VNode[] =>
    some.map((one) => (
      <SupplyButton
        key={one.supply.id}
        laid={one}
        pressed={one === shown}
        choose={() => choose(one.supply.id)}
      />
    ));
  return (
    <div class="match-board" ref={board}>
      <BesidePaper faced={faced} how={matchWords.tapSpot} picked={picked} pick={pick}>
        {problem ? (
          <Mishap problem={problem} again={() => void matches.fresh(key)} />
        ) : (
          answer === null && <Coming waiting={waiting} />
        )}
        {shown && <BigPicture laid={shown} isNearest={hers === undefined} />}
        <ul class="palette-row" aria-label={matchWords.paletteRow}>
          {faced.side.palette.map((one, index) => (
            <li key={index} class="palette-column">
              <PalettePick
                colour={one}
                pressed={colour === index}
                pick={(on) => pick(on ? { colour: index, spot: null } : WHOLE_PAPER)}
              />
              {beside === null && buttons(nearestTo(one, laid))}
            </li>
          ))}
        </ul>
        {beside !== null && (
          <YoursBeside colour={faced.side.palette[beside]!}>{buttons(laid)}</YoursBeside>
        )}
      </BesidePaper>
    </div>
  );
}

function PalettePick({
  colour,
  pressed,
  pick,
}: {
  colour: PaletteColour;
  pressed: boolean;
  pick: (on: boolean) => void;
}): VNode {
  return (
    <button
      type="button"
      class="palette-pick"
      aria-pressed={pressed}
      onClick={() => pick(!pressed)}
    >
      <span class="palette-colour" style={{ background: colour.hex }} />
      <span class="small">{colour.name}</span>
    </button>
  );
}

/** All that she has against the one colour that she touched, whichever lies nearer to it. */
function YoursBeside({
  colour,
  children,
}: {
  colour: PaletteColour;
  children: readonly VNode[];
}): VNode {
  return (
    <section class="yours-beside">
      <h4>{matchWords.yoursBeside(colour.name)}</h4>
      <div class="palette-row">{children}</div>
    </section>
  );
}

/** The nearest first; what a shining one measures is no colour, so those come last. */
function laidBy(list: readonly Match[], supplies: readonly Supply[]): Laid[] {
  return list
    .flatMap((match) => {
      const supply = supplies.find(({ id }) => id === match.supply);
      return supply === undefined ? [] : [{ match, supply }];
    })
    .sort(
      (a, b) =>
        Number(a.supply.glossy) - Number(b.supply.glossy) ||
        a.match.difference - b.match.difference,
    );
}

/** What comes nearest to a colour of the palette. */
function nearestTo({ lab }: PaletteColour, laid: readonly Laid[]): Laid[] {
  return laid.filter(({ match }) => match.nearest.lab.join() === lab.join());
}

function BigPicture({
  laid: { match, supply },
  isNearest,
}: {
  laid: Laid;
  /** Whether it stands here because none of hers is nearer. */
  isNearest: boolean;
}): VNode {
  const say = matchWords;
  // The reason of these two begins with the direction.
  const said = match.verdict === 'close' || match.verdict === 'apart';
  return (
    <div class="big-match" role="group" aria-label={say.bigPicture(supply.name)}>
      <div class="big-pair" aria-hidden="true">
        <span class="big-half" style={{ background: supply.colour.hex }} />
        <span class="big-half" style={{ background: match.at.hex }} />
        <span class="small">{supply.name}</span>
        <span class="small">{say.thePaper}</span>
      </div>
      <div class="big-words" aria-live="polite">
        <p class="big-verdict">
          <Icon name={marks[match.verdict]} /> {say.verdicts[match.verdict]}
        </p>
        <p>
          <strong>{supply.name}</strong>
          {isNearest && !supply.glossy && say.nearestOfYours} {say.beside(match.nearest.name)}
          {!said && match.direction !== '' && <>: {match.direction}</>}.
        </p>
        <p class="small">{match.reason}</p>
        {!supply.glossy && (
          <details class="small figures">
            <summary>{say.figures}</summary>
            <p>{say.difference(match.difference, match.uncertainty)}</p>
          </details>
        )}
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
