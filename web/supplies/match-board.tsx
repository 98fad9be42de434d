import type { VNode } from 'preact';
import type { Match, Supply } from '../../server/contract/supplies.ts';
import { Icon, type IconName } from '../table/icon.tsx';
import { Once } from '../table/waiting.tsx';
import { words } from '../words.ts';
import { matches } from '../wire/shelves.ts';
import type { Faced } from '../pad/sides.ts';

const marks: Record<Match['verdict'], IconName> = {
  match: 'same',
  close: 'near',
  apart: 'apart',
  'cannot tell': 'unsure',
};

/** A paper's palette as a row, each supply laid against the colour that it comes nearest to. */
export function MatchBoard({
  faced,
  supplies,
}: {
  faced: Faced;
  supplies: readonly Supply[];
}): VNode {
  const key = `${faced.side.id}/${supplies.map(({ id }) => id).join()}`;
  return (
    <div class="match-board">
      <h3>{words.match.against(words.pad.sideName(faced.sheet.label, faced.face))}</h3>
      <Once of={matches.at(key)} again={() => void matches.fresh(key)}>
        {(list) => (
          <>
            <ul class="matches">
              {[...list]
                .sort((a, b) => a.difference - b.difference)
                .map((match) => (
                  <MatchLine key={match.supply} match={match} supplies={supplies} />
                ))}
            </ul>
            {list[0] && (
              <p class="caution">
                <Icon name="caution" /> {list[0].caution}
              </p>
            )}
          </>
        )}
      </Once>
    </div>
  );
}

function MatchLine({ match, supplies }: { match: Match; supplies: readonly Supply[] }): VNode {
  const supply = supplies.find(({ id }) => id === match.supply);
  return (
    <li class="match-line">
      <span class="match-pair" aria-hidden="true">
        <span style={{ background: supply?.colour.hex ?? 'transparent' }} />
        <span style={{ background: match.nearest.hex }} />
      </span>
      <span class={`mark ${match.verdict.replace(' ', '-')}`}>
        <Icon name={marks[match.verdict]} /> {words.match.verdicts[match.verdict]}
      </span>
      <div>
        <strong>{supply?.name}</strong> {words.match.beside(match.nearest.name)}
        {match.direction !== '' && <span>, {match.direction}</span>}
        <span class="small">{match.reason}</span>
        <details class="small figures">
          <summary>{words.match.figures}</summary>
          <p>{words.match.difference(match.difference, match.uncertainty)}</p>
        </details>
      </div>
    </li>
  );
}
